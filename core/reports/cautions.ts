/** Cautions and the notice that stand on every set of sheets. They defer to local code, engineer, producer and label. */
export interface Caution {
  readonly title: string
  readonly text: string
  readonly source: string
}

export const cautions: readonly Caution[] = [
  {
    title: 'Wet concrete burns skin.',
    text: 'Waterproof boots, gloves and eye cover; no kneeling in it; rinse with clean water at once. The burn is felt late.',
    source: 'pH 12 to 13; common practice, safety sheet of the producer rules',
  },
  {
    title: 'Cutting makes silica dust.',
    text: 'Cut wet, with water at the blade, and wear what the rule asks for.',
    source: 'OSHA 29 CFR 1926.1153, Table 1',
  },
  {
    title: 'Heat.',
    text: 'Water, shade and rest for all hands; start earlier on hot days.',
    source: 'common practice; state rules differ',
  },
  {
    title: 'Power lines.',
    text: 'Keep pump booms, chutes and screeds at least 10 ft (3.05 m) away up to 50 kV, more above.',
    source: 'OSHA 29 CFR 1926.1408, Table A',
  },
  {
    title: 'Call 811 before digging',
    text: '(in the United States; elsewhere the local service) and mark in white.',
    source: 'common practice; state law rules',
  },
  {
    title: 'Pools:',
    text: 'bonding is inspected before the pour; the electrician and the local code decide.',
    source: 'NFPA 70, Article 680.26, as quoted',
  },
]

export const notice =
  'Planning estimates from weather and published rules. They do not replace the local code, a licensed engineer, the ready-mix producer, or the label and safety sheet of each material. Test the slab by hand before stamping.'

/** The line that stands on every plan. */
export const cautionLine =
  'Wet concrete burns skin: boots, gloves, eye cover, rinse at once. Cut wet. Water and shade in the heat. Stay clear of power lines. Call before digging.'

export const noticeLine =
  'Planning estimate. The local code, a licensed engineer, the ready-mix producer and the label of each material rule. Check all sizes on site.'
