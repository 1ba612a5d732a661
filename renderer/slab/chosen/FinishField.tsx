import type { Command } from '../../../core/document/commands/editSite'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { ChoiceField } from '../ChoiceField'
import { finishChoices } from '../choices'
import { useRun } from '../useRun'

/** The pattern and color of a slab or a strip, out of those of the site. */
export function FinishField({
  site,
  finishId,
  set,
}: {
  readonly site: Site
  readonly finishId: Id
  readonly set: (finishId: Id) => Command
}) {
  const run = useRun()
  return (
    <ChoiceField
      label="Finish"
      value={finishId}
      choices={finishChoices(site.finishes)}
      onSet={id => run('finish', set(id))}
    />
  )
}
