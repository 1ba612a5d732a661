import { addBorder } from '../../../core/document/commands/slabParts'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Site } from '../../../shared/document/site'
import type { Border, Slab } from '../../../shared/document/slab'
import { useEditorState } from '../../editor/useEditor'
import { useRun } from '../useRun'

/** A border of the usual width along edges of a path, inside what is there, in the last finish of the site. */
export function AddBorder({
  site,
  slab,
  pathId,
  edges,
}: {
  readonly site: Site
  readonly slab: Slab
  readonly pathId: string
  readonly edges: Border['edges']
}) {
  const run = useRun()
  const widthM = useEditorState(state => state.options.widthM)
  const width = printMeasures(site.units).size(widthM)
  return (
    <button
      type="button"
      className="btn"
      onClick={() =>
        run(
          'border',
          addBorder(slab.id, {
            ...{ pathId, edges, widthM, placed: 'withField' },
            finishId: site.finishes.at(-1)?.id ?? slab.finishId,
          }),
        )
      }
    >
      {edges === 'all' ? `Add a border, ${width} all around` : `Add a border here, ${width}`}
    </button>
  )
}
