/** A box to check, with its words. */
export function CheckField({
  label,
  value,
  onSet,
}: {
  readonly label: string
  readonly value: boolean
  readonly onSet: (value: boolean) => void
}) {
  return (
    <label className="check-field">
      <input type="checkbox" checked={value} onChange={event => onSet(event.target.checked)} />
      {label}
    </label>
  )
}
