import { changeFinish } from '../../core/document/commands/changeEntity'
import { addFinish } from '../../core/document/commands/setSite'
import type { Finish } from '../../shared/document/materials'
import type { Site } from '../../shared/document/site'
import { useEditor } from '../editor/useEditor'
import { ChoiceField } from './ChoiceField'
import { patternChoices } from './choices'
import { NumberField } from './NumberField'
import { TextField } from './TextField'
import { useRun } from './useRun'

/** Neutral names of our own. */
const colors = [
  ['#c9b79a', 'Sandbar'],
  ['#b0a79b', 'Weathered gray'],
  ['#8c7f70', 'Creek bed'],
  ['#a8764e', 'Kiln clay'],
  ['#7d6450', 'Walnut hull'],
  ['#6f7478', 'Storm slate'],
  ['#d9cdb4', 'Oat straw'],
  ['#9a5f45', 'Barn brick'],
] as const

const patternWord = (pattern: Finish['pattern']): string =>
  patternChoices.find(([each]) => each === pattern)?.[1] ?? pattern

/** A name that begins with the pattern goes with it, "Ashlar, gray" → "Broom, gray"; any other stays as it was written. */
const nameForPattern = (name: string, from: Finish['pattern'], to: Finish['pattern']): string =>
  name.startsWith(patternWord(from)) ? patternWord(to) + name.slice(patternWord(from).length) : name

/** Patterns and colors of the site's finishes. */
export function FinishForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  return (
    <div className="fields">
      {site.finishes.map(({ id, name, pattern, color, patternDeg = 0 }) => (
        <fieldset key={id} className="finish">
          <legend>{name}</legend>
          <TextField label="Name" value={name} onSet={to => run('finish name', changeFinish(id, { name: to }))} />
          <ChoiceField
            label="Pattern"
            value={pattern}
            choices={patternChoices}
            onSet={to => run('pattern', changeFinish(id, { pattern: to, name: nameForPattern(name, pattern, to) }))}
          />
          <ChoiceField
            label="Color"
            value={color}
            choices={colors.some(([each]) => each === color) ? colors : [[color, 'As it is'], ...colors]}
            onSet={to => run('color', changeFinish(id, { color: to }))}
          />
          <NumberField
            label="Turned"
            unit="° left"
            value={patternDeg}
            min={-180}
            max={180}
            step={0.5}
            onSet={to => run('pattern turn', changeFinish(id, { patternDeg: to }))}
          />
          <button
            type="button"
            className="btn"
            onClick={() =>
              editor.pick({
                prompts: [`${name}: click where its first stone starts.`],
                catches: true,
                preview: ([at]) => (at ? changeFinish(id, { patternAt: at }) : null),
                done: ([at]) => {
                  if (at) run('pattern start', changeFinish(id, { patternAt: at }))
                },
              })
            }
          >
            Start the pattern at a point
          </button>
        </fieldset>
      ))}
      <button
        type="button"
        className="btn"
        onClick={() =>
          run(
            'finish',
            addFinish({ name: `Finish ${site.finishes.length + 1}`, pattern: 'runningBond', color: '#8c7f70' }),
          )
        }
      >
        One more finish
      </button>
    </div>
  )
}
