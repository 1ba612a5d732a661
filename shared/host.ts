/**
 * What a page may ask of the program around it, whichever that is: the desktop window or the loopback host. Checked at
 * both ends. A page never names a path: it holds ids the host handed out, or a bare file name.
 */
import * as z from 'zod/mini'
import { WeatherHour } from './document/day'
import { limits } from './limits'

/** Why a file could not be read or written, in a closed list; worded by the page. */
export const fileReasons = [
  'diskFull',
  'readOnly',
  'noPermission',
  'inUse',
  'openElsewhere',
  'vanished',
  'changedOutside',
  'exists',
  'nameRefused',
  'notAFile',
  'fileTooLarge',
  'notText',
  'wouldNotOpen',
  'driveFault',
  'untitled',
  'unknownId',
  'canceled',
  'notHere',
  'hostGone',
] as const
export type FileReason = (typeof fileReasons)[number]

const text = z.string().check(z.maxLength(limits.fileBytes))
const id = z.string().check(z.regex(/^[\w-]{1,64}$/))
const instant = z.iso.datetime()
/** A bare name: no folder, no link tricks; the host adds the ending where it is missing. */
const fileName = z.string().check(z.minLength(1), z.maxLength(120))
/** Rises with each change of a document: an older text never replaces a newer one. */
const order = z.number().check(z.int(), z.nonnegative())
const nothing = z.strictObject({})

export const FileFailure = z.strictObject({
  reason: z.enum(fileReasons),
  /** The file's bare name, where one is known. */
  name: z.optional(z.string()),
})
export type FileFailure = z.infer<typeof FileFailure>

/** `saved` also where the folder could not be synced or no version was kept: the report says so. */
export const SaveReport = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('saved'),
    at: instant,
    bytes: z.number(),
    folderSynced: z.boolean(),
    versionKept: z.boolean(),
  }),
  /** Nothing was touched: the old file is whole. */
  z.strictObject({ outcome: z.literal('notSaved'), reason: z.enum(fileReasons) }),
  /** The drive stopped answering at the last step: the file is all old or all new. */
  z.strictObject({ outcome: z.literal('unsure'), reason: z.enum(fileReasons) }),
])
export type SaveReport = z.infer<typeof SaveReport>

export const RecentFile = z.strictObject({ fileId: id, name: z.string(), openedAt: instant, missing: z.boolean() })
export const SampleFile = z.strictObject({ sampleId: id, name: z.string(), bytes: z.number() })
export const FolderFile = z.strictObject({ fileId: id, name: z.string(), changedAt: instant, bytes: z.number() })
/** Work that was not saved when a program ended. `fileName` is absent where it was never saved. */
export const Recovery = z.strictObject({
  recoveryId: id,
  title: z.string(),
  savedAt: instant,
  bytes: z.number(),
  fileName: z.optional(z.string()),
})
export const Version = z.strictObject({ versionId: id, savedAt: instant, bytes: z.number() })

/** A document the host keeps track of. `text` is as it stands in the file; the page reads it. */
export const OpenedSite = z.strictObject({
  docId: id,
  /** Absent for an untitled copy. */
  fileName: z.optional(z.string()),
  title: z.string(),
  text,
  /** Why it may be looked at but not saved under its name. */
  readOnly: z.optional(z.enum(['openElsewhere', 'readOnly'])),
})
export type OpenedSite = z.infer<typeof OpenedSite>

export const ImportKind = z.enum(['picture', 'table', 'map'])
export const ImportedFile = z.strictObject({ name: z.string(), base64: z.string() })
export const ExportKind = z.enum(['pdf', 'svg', 'png', 'csv', 'geojson', 'ics', 'json', 'txt'])

export const HostTheme = z.enum(['light', 'dark', 'sunlight'])

export const StartInfo = z.strictObject({
  host: z.enum(['desktop', 'browser']),
  appVersion: z.string(),
  /** The working folder as the user would say it. */
  folder: z.string(),
  /** The local date, for the pure parts that have no clock. */
  today: z.iso.date(),
  zone: z.string(),
  recent: z.array(RecentFile),
  samples: z.array(SampleFile),
  recoveries: z.array(Recovery),
  /** As it was last chosen on this computer; absent before that. */
  theme: z.optional(HostTheme),
})
export type StartInfo = z.infer<typeof StartInfo>

/** What the public forecast service answered; `reason` = why it cannot be had, in words. */
export const ForecastAnswer = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('hours'),
    hours: z.array(WeatherHour),
    source: z.string(),
    fetchedAt: instant,
    /** Over 0 where a kept answer is given again. */
    ageMin: z.number(),
  }),
  z.strictObject({ outcome: z.literal('none'), reason: z.string() }),
])
export type ForecastAnswer = z.infer<typeof ForecastAnswer>

const method = <In extends z.ZodMiniType, Out extends z.ZodMiniType>(input: In, output: Out) => ({ input, output })

/** Every method: what it takes and what it answers when it does not fail. Its failure is a `FileFailure`. */
export const hostMethods = {
  start: method(nothing, StartInfo),
  /** A fresh id for a site made on the page, and a document to keep it in. */
  newSite: method(z.strictObject({ title: z.string() }), z.strictObject({ docId: id, siteId: z.string() })),
  listFolder: method(nothing, z.array(FolderFile)),
  openFile: method(z.strictObject({ fileId: id }), OpenedSite),
  /** The system's own dialog, on the desktop; elsewhere fails with `notHere`: list the folder instead. */
  openDialog: method(nothing, OpenedSite),
  openSample: method(z.strictObject({ sampleId: id }), OpenedSite),
  sampleText: method(z.strictObject({ sampleId: id }), z.strictObject({ text })),
  openRecovery: method(z.strictObject({ recoveryId: id }), OpenedSite),
  dropRecovery: method(z.strictObject({ recoveryId: id }), nothing),
  forgetRecent: method(z.strictObject({ fileId: id }), nothing),
  /** `overwrite`: also where another program changed the file since; what it held is kept as a version first. */
  save: method(z.strictObject({ docId: id, text, order, overwrite: z.optional(z.boolean()) }), SaveReport),
  /** On the desktop `name` is only proposed in the dialog. `replace`: an existing file may be replaced. */
  saveAs: method(
    z.strictObject({ docId: id, text, order, name: fileName, replace: z.optional(z.boolean()) }),
    z.strictObject({ report: SaveReport, fileName: z.optional(z.string()) }),
  ),
  /** Into the recovery area, which holds only what the file does not. */
  autosave: method(z.strictObject({ docId: id, title: z.string(), text, order }), SaveReport),
  /**
   * The document is put away; `keepRecovery` leaves its unsaved work to be offered again. `leaving`: the window that
   * was asked to close may go now.
   */
  close: method(
    z.strictObject({ docId: id, keepRecovery: z.optional(z.boolean()), leaving: z.optional(z.boolean()) }),
    nothing,
  ),
  listVersions: method(z.strictObject({ docId: id }), z.array(Version)),
  versionText: method(z.strictObject({ docId: id, versionId: id }), z.strictObject({ text })),
  /** The system's own dialog, on the desktop; elsewhere `notHere`: the page has its own. */
  importFile: method(z.strictObject({ kind: ImportKind }), ImportedFile),
  /** Never replaces a file unless the user said so in the system's dialog. */
  exportFile: method(
    z.strictObject({ name: fileName, kind: ExportKind, base64: z.string().check(z.maxLength(limits.fileBytes)) }),
    z.strictObject({ fileName: z.string() }),
  ),
  /** The system's own print dialog, on the desktop; elsewhere `notHere`: the page has its own. */
  print: method(nothing, nothing),
  /** The one method that asks beyond this machine, and only when the user wants the weather of the place. */
  forecast: method(
    z.strictObject({
      latDeg: z.number().check(z.minimum(-90), z.maximum(90)),
      lonDeg: z.number().check(z.minimum(-180), z.maximum(180)),
    }),
    ForecastAnswer,
  ),
  /** Remembered for the next start. */
  keepTheme: method(z.strictObject({ theme: HostTheme }), nothing),
  /** What the window's title and its guard against closing need to know. */
  tellState: method(z.strictObject({ docId: id, title: z.string(), unsaved: z.boolean() }), nothing),
} as const

export type HostMethod = keyof typeof hostMethods
export const hostMethodNames = Object.keys(hostMethods) as readonly HostMethod[]
export type HostInput<M extends HostMethod> = z.infer<(typeof hostMethods)[M]['input']>
export type HostOutput<M extends HostMethod> = z.infer<(typeof hostMethods)[M]['output']>
export type HostAnswer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: FileFailure }
export type HostApi = { readonly [M in HostMethod]: (input: HostInput<M>) => Promise<HostAnswer<HostOutput<M>>> }

/** The channels of the desktop window: one for each method, one on which the page hears. */
export const callChannel = (name: HostMethod): string => `slabwright:${name}`
export const eventChannel = 'slabwright:event'

/** What a call brought, or null when it is not what the method takes. */
export function readInput<M extends HostMethod>(name: M, raw: unknown): HostInput<M> | null {
  const parsed = hostMethods[name].input.safeParse(raw)
  return parsed.success ? (parsed.data as HostInput<M>) : null
}

const Envelope = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), error: FileFailure }),
])

/** What an answer brought, or null when it is not what the method answers. */
export function readAnswer<M extends HostMethod>(name: M, raw: unknown): HostAnswer<HostOutput<M>> | null {
  const envelope = Envelope.safeParse(raw)
  if (!envelope.success) return null
  if (!envelope.data.ok) return envelope.data
  const parsed = hostMethods[name].output.safeParse(envelope.data.value)
  return parsed.success ? { ok: true, value: parsed.data as HostOutput<M> } : null
}

/** What the desktop window tells the page: a menu entry was chosen, a file was opened from outside. */
export const HostEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('menu'),
    entry: z.enum(['new', 'open', 'save', 'saveAs', 'versions', 'export', 'print', 'undo', 'redo']),
  }),
  z.strictObject({ kind: z.literal('opened'), site: OpenedSite }),
  z.strictObject({ kind: z.literal('openFailed'), failure: FileFailure }),
  /** The user wants the window gone: save or let go, then `close` with `leaving`; nothing, to stay. */
  z.strictObject({ kind: z.literal('closing') }),
  /** The program around the page has ended: nothing can be saved until it is started again. */
  z.strictObject({ kind: z.literal('lost') }),
])
export type HostEvent = z.infer<typeof HostEvent>
