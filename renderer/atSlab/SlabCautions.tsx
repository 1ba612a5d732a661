/** Said once, before the first tap; the label, the producer and the local rules come first. */
const lines: readonly (readonly [string, string])[] = [
  [
    'Wet concrete burns.',
    'It is alkaline: boots, gloves, eye cover, no kneeling in it. Rinse with clean water at once; the burn is felt late.',
  ],
  [
    'Heat.',
    'Water, shade and rest for every hand. Slow down when somebody stops sweating or talks confused, and call for help.',
  ],
  [
    'Lightning.',
    'At the first thunder put the tools down and go inside or into a vehicle; wait 30 minutes after the last.',
  ],
  ['Retarder, release, color.', 'The label, the safety sheet and the ready-mix producer rule, and so do local rules.'],
  [
    'Times here are estimates.',
    'They can be off by 30 minutes or more until a few pours are logged. The finger test and the foreman decide.',
  ],
]

export function SlabCautions({ onSeen }: { readonly onSeen: () => void }) {
  return (
    <section className="slab-cautions" aria-label="Before you start">
      <h2>Before you start</h2>
      <ul>
        {lines.map(([title, words]) => (
          <li key={title}>
            <b>{title}</b> {words}
          </li>
        ))}
      </ul>
      {/* biome-ignore lint/a11y/noAutofocus: the screen has just changed to this one answer */}
      <button type="button" className="slab-btn main" autoFocus onClick={onSeen}>
        Seen, go on
      </button>
    </section>
  )
}
