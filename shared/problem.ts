/** What stopped or worried a computation, in a closed list of codes; worded in core/problems, never here. */
import * as z from 'zod/mini'

export const doorCodes = [
  'fileEmpty',
  'fileTooLarge',
  'notText',
  'notJson',
  'wrongFormat',
  'newerVersion',
  'missingField',
  'unknownField',
  'wrongType',
  'badNumber',
  'outOfRange',
  'notOneOf',
  'badId',
  'repeatedId',
  'danglingId',
  'limitExceeded',
  'moreFaults',
  'unknownZone',
  'badDate',
  'badTime',
] as const

export const geometryCodes = [
  'pathTooShort',
  'zeroEdge',
  'edgeCountMismatch',
  'selfCrossing',
  'wrongWinding',
  'roundTooLarge',
  'riseTooLarge',
  'openingOutside',
  'openingTouches',
  'openingsOverlap',
  'slabsOverlap',
  'borderTooWide',
  'bandOutside',
  'insetOutside',
  'stepsBeyondEdge',
  'arcsKeptAsChords',
] as const

export const sunCodes = [
  'noHeight',
  'roofFlat',
  'roofOverCourtyard',
  'courtyardOutside',
  'polarDay',
  'polarNight',
  'hourMissing',
] as const

export const pourCodes = [
  'capacityTooSmall',
  'tooFewPours',
  'noCutFound',
  'noLanes',
  'requiredMisses',
  'requiredCarriedOn',
  'requiredOpen',
  'requiredCross',
  'requiredSmall',
  'requiredForbidden',
  'noJointAllowed',
  'narrowerThanWished',
  'poursNarrow',
  'wishesAddPours',
  'slabInPieces',
  'poursMerged',
  'unplannedPart',
  'pourLost',
  'pourOverCap',
  'jointOnForbidden',
  'requiredNotKept',
  'pourUnderWidth',
  'lockedPourChanged',
  'anchorLost',
  'jointOutside',
  'jointOpen',
  'differsFromAsBuilt',
  'outsideRange',
] as const

export const concreteCodes = [
  'weatherEmpty',
  'weatherGap',
  'weatherHourMissing',
  'weatherHourRepeated',
  'airOutOfRange',
  'humidityOutOfRange',
  'humidityMissing',
  'dewPointOverAir',
  'windOutOfRange',
  'windMissing',
  'cloudOutOfRange',
  'cloudMissing',
  'rainOutOfRange',
  'highBelowLow',
  'dewPointOverLow',
  'noSunrise',
  'evaporationOutsideChart',
  'evaporationHigh',
  'placedTempMissing',
  'placedTempOutOfRange',
  'placedTooHot',
  'placedTooCold',
  'coldWeather',
  'freezeAhead',
  'doseOverHour',
  'setNotReached',
  'crustLikely',
  'lastPrintBeforeFirstMat',
  'logTimesOutOfOrder',
  'logFarFromPlan',
  'iceOverLimit',
  'coolingOverLimit',
  'mixMassMissing',
  'rainWatch',
  'rainNoGo',
  'rainUnknown',
  'crewHeat',
  'crewHeatHigh',
] as const

/** Edits of the document and measuring in the field. */
export const editCodes = [
  'entityMissing',
  'nothingChosen',
  'nothingToPaste',
  'badMeasure',
  'radiusTooSmall',
  'membershipsMerged',
  'removedWith',
  'acceptedRemoved',
  'pouredFrozen',
  'finishInUse',
  'lastFinish',
  'materialInUse',
  'tapesFromOnePoint',
  'tapesTooShort',
  'tapesTooLong',
  'traverseOpen',
  'traverseShort',
  'turnsOpen',
  'strokeTooShort',
  'strokeFlat',
  'notFourCorners',
  'arcsKept',
  'leavesAboveTop',
  'sunTooLow',
  'shadowTooShort',
  'shadeNotExplained',
] as const

export const dayCodes = [
  'dayNotPlanned',
  'dayWeatherShifted',
  'shadeOfOtherDay',
  'crewTooSmall',
  'truckEmpty',
  'doseOnEmptyLoad',
  'startInDark',
  'startOutsideHours',
  'darkBeforeDone',
  'quietBeforeDone',
  'slackNegative',
  'slackShort',
  'setUnknown',
  'overPracticeCap',
  'overCrewCapacity',
  'capacityBelowLeast',
  'outOfReach',
  'shortLoad',
  'loadTooOld',
  'unloadTooLong',
  'haulTooFar',
  'haulBeyondReach',
  'stripOverScreed',
  'crewShort',
  'retarderOffLabel',
  'retarderShort',
  'forecastBadAnswer',
  'weatherRowUnread',
  'weatherColumnsUnknown',
  'weatherFileUnread',
] as const

/** The price list. */
export const priceCodes = [
  'priceOpen',
  'priceCurrencies',
  'partUnpriced',
  'stepsUnpriced',
  'materialUnpriced',
  'paymentsUneven',
] as const

/** Order and days of the pours, and edits of joints and pours. */
export const orderCodes = [
  'accessNowhere',
  'pourUnreachable',
  'noPourDay',
  'waysClosed',
  'finishLate',
  'orderDiffers',
  'orderGap',
  'neighborTooYoung',
  'pathThroughFresh',
  'notPourDay',
  'crewOverDay',
  'jointLocked',
  'pourLocked',
  'pourIsPoured',
  'splitMisses',
  'notNeighbors',
  'numberTaken',
  'jointOffSlab',
  'nothingToPlan',
] as const

export const problemCodes = [
  ...doorCodes,
  ...geometryCodes,
  ...sunCodes,
  ...pourCodes,
  ...concreteCodes,
  ...editCodes,
  ...dayCodes,
  ...priceCodes,
  ...orderCodes,
] as const
export type ProblemCode = (typeof problemCodes)[number]

export const severities = ['stop', 'check', 'note'] as const
export type Severity = (typeof severities)[number]

export type ProblemValue = number | string

/** A problem before it is put into words: what the computing parts return. Values are SI. */
export interface Finding {
  readonly code: ProblemCode
  readonly severity: Severity
  readonly values: Readonly<Record<string, ProblemValue>>
  /** JSON pointer into the document. */
  readonly field?: string
  readonly at?: { readonly entityId: string; readonly point?: readonly [number, number] }
}

export const ProblemSchema = z.strictObject({
  code: z.enum(problemCodes),
  severity: z.enum(severities),
  message: z.string(),
  values: z.record(z.string(), z.union([z.number(), z.string()])),
  field: z.optional(z.string()),
  at: z.optional(z.strictObject({ entityId: z.string(), point: z.optional(z.tuple([z.number(), z.number()])) })),
  hint: z.optional(z.string()),
})
/** A finding in trade words, in the unit system of the site. `stop` halts only what depends on the entity. */
export type Problem = z.infer<typeof ProblemSchema>

export type Result<T, E = readonly Problem[]> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E }

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value })
export const err = <E>(error: E): { readonly ok: false; readonly error: E } => ({ ok: false, error })
