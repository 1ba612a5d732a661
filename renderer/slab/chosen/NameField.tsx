import type { Command } from '../../../core/document/commands/editSite'
import { TextField } from '../TextField'
import { useRun } from '../useRun'

/** The name of something that may go without: its kind is said instead. */
export function NameField({
  name = '',
  set,
}: {
  readonly name: string | undefined
  readonly set: (name: string | undefined) => Command
}) {
  const run = useRun()
  return <TextField label="Name" value={name} onSet={text => run('name', set(text.trim() || undefined))} />
}

/** The name of something that must have one. */
export function NeededNameField({
  name,
  set,
  label = 'Name',
  step = 'name',
}: {
  readonly name: string
  readonly set: (name: string) => Command
  readonly label?: string
  /** Names the undo step. */
  readonly step?: string
}) {
  const run = useRun()
  return (
    <TextField
      label={label}
      value={name}
      onSet={text =>
        text.trim() === '' ? 'Write a name: lists and sheets call it by that.' : run(step, set(text.trim()))
      }
    />
  )
}
