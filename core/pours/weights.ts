/**
 * What a plan of pours is judged by, in feet of construction joint: one table, every figure a setting. A cost in feet
 * of joint can be talked about on the site: "this plan is as good as one with 12 ft less joint".
 */
export interface Weight {
  readonly value: number
  readonly unit: string
  readonly meaning: string
  readonly source: string
}

const tuned = 'own choice, tuned on drawn-up slabs'
const weight = (value: number, unit: string, meaning: string, source: string): Weight => ({
  value,
  unit,
  meaning,
  source,
})

export const weightTable = {
  extraPour: weight(
    1000,
    'ft each',
    'a pour more than the area asks for: about a crew-day',
    'common practice, no source',
  ),
  jointLength: weight(1, 'ft per ft', 'construction joint to form, dowel and detail', 'the unit of this table'),
  acuteCorner: weight(25, 'ft', 'a new corner under 60°, rising from acuteFloor at 60° by this much toward 0°', tuned),
  acuteFloor: weight(4, 'ft', 'the least a new corner under 60° costs', tuned),
  acuteBelowDeg: weight(
    60,
    '°',
    'corners sharper than this break off',
    'American Concrete Pavement Association, joint layout guidance: no angle under 60°',
  ),
  nearCorner: weight(
    8,
    'ft',
    'a slab corner close to a joint but not on it leaves a finger the mats do not fit',
    tuned,
  ),
  nearCornerM: weight(1.2192, 'm', '4 ft: how close is too close', 'common practice, no source'),
  finger: weight(
    1.25,
    'ft per ft',
    'strip between a joint and an edge beside it, falling from this at no width to 0 at fingerM',
    tuned,
  ),
  fingerM: weight(
    2.4384,
    'm',
    '8 ft: a leg less wide takes no row of mats with a finisher on either side',
    'common practice, no source',
  ),
  legM: weight(
    3.6576,
    'm',
    '12 ft: a leg of a pour narrower than this is a finger too, if narrow beside the rest',
    tuned,
  ),
  legShare: weight(0.6, '1', 'a leg less wide than this share of its pour is narrow beside the rest', tuned),
  reentrantLeft: weight(
    8,
    'ft each',
    're-entrant corner left inside a pour: cracks start there',
    'common practice; ACI 302.1R advises joints at re-entrant corners',
  ),
  holeInside: weight(8, 'ft each', 'opening left wholly inside a pour', tuned),
  aspect: weight(6, 'ft', 'per unit of x + x², x = length ÷ width beyond aspectAbove', tuned),
  aspectAbove: weight(2, '1', 'pours up to twice as long as wide cost nothing', tuned),
  aspectMost: weight(40, 'ft', 'the most that a long pour costs', tuned),
  narrow: weight(20, 'ft', 'pour narrower than narrowM where the slab is wider', tuned),
  narrowM: weight(
    1.2192,
    'm',
    '4 ft: narrower does not take a mat and a kneeling finisher',
    'common practice, no source',
  ),
  imbalance: weight(60, 'ft', 'per pour, times (1 − area ÷ mean area)²', tuned),
  offGrid: weight(0.12, 'ft per ft', 'joint that does not fall on a line of the contraction-joint grid', tuned),
  nearMiter: weight(6, 'ft each', 'joint beside a miter of the border, rising from 0 at nearMiterM', 'own assumption'),
  nearMiterM: weight(0.6096, 'm', '2 ft: a joint closer to a miter leaves a loose wedge of border', 'own assumption'),
  offDirection: weight(0.5, 'ft per ft', 'joint neither along nor square to a wished direction', 'own assumption'),
  hidden: weight(
    0.5,
    'ft per ft',
    'taken off where a border, a band or a straight course of the pattern hides the joint',
    'common practice, no source',
  ),
  extraJoint: weight(2, 'ft each', 'each piece of joint beyond one a cut', tuned),
  teeOffset: weight(8, 'ft', 'joints that meet a third from opposite sides not quite in line, at 0 ft apart', tuned),
  teeFloor: weight(2, 'ft', 'the least such a pair costs', tuned),
  teeWithinM: weight(1.524, 'm', '5 ft: ends farther apart are two tees', tuned),
  reach: weight(0.5, 'ft per ft²', 'area farther than reachM from any place to stand', 'own assumption'),
  shadeLine: weight(
    0.05,
    'ft per minute and 10 %',
    'sun and shade on one pour between placing and stamping: each minute, times the smaller of the two shares',
    'own assumption',
  ),
  shadeLineMost: weight(60, 'ft', 'the most that a shade line across a pour costs', 'own assumption'),
  mixedPlacing: weight(
    0.02,
    'ft per ft²',
    'pour placed in two ways, within reach of the chute and by carts beyond, say: the smaller part',
    'own assumption',
  ),
  unusedTruck: weight(
    15,
    'ft per truck',
    'part of a truck ordered and not filled: price of a truck ÷ price of a foot of joint',
    'settings truckPrice and jointPriceM: own assumption, put in your own',
  ),
  shortLoad: weight(
    37.5,
    'ft each',
    'load small enough for a fee: the fee ÷ price of a foot of joint',
    'settings shortLoadPrice and jointPriceM: own assumption, put in your own',
  ),
  reachM: weight(3.6576, 'm', '12 ft: how far a finisher works from somewhere to stand', 'common practice, no source'),
} as const satisfies Record<string, Weight>

export type Weights = Readonly<Record<keyof typeof weightTable, number>>

/** The table's values with the overrides put in. */
export function resolveWeights(overrides: Partial<Weights> | undefined): Weights {
  const values: Record<string, number> = {}
  for (const [name, { value }] of Object.entries(weightTable)) values[name] = value
  return { ...values, ...overrides } as Weights
}
