import '../../slab/slab.css'
import { useRef } from 'react'
import { addMaterial } from '../../../core/document/commands/setMaterials'
import type { Site } from '../../../shared/document/site'
import { takeEdit } from '../../app/applyEdit'
import { Fold } from '../../app/Fold'
import { useSession } from '../../app/session'
import { MaterialFields } from './MaterialFields'
import { materialStarts } from './materialStarts'

/** All materials of the site, each with what its figures are computed from. */
export function MaterialsForm({ site }: { readonly site: Site }) {
  const session = useSession()
  const { materials = [], units } = site
  const add = useRef<HTMLButtonElement>(null)
  const take = (material: Parameters<typeof addMaterial>[0]) => takeEdit(session, 'material', addMaterial(material))
  return (
    <section className="slab-form" aria-label="Materials">
      <Fold name="Materials" told={materials.length === 0 ? 'none entered' : `${materials.length} entered`}>
        <div className="fields">
          {materials.map(material => (
            <MaterialFields
              key={material.id}
              site={site}
              material={material}
              // The button that was pressed is gone with its material.
              onRemoved={() => add.current?.focus()}
            />
          ))}
          {materialStarts.map(({ kind, name, by }, i) => (
            <button
              key={kind}
              ref={i === 0 ? add : null}
              type="button"
              className="btn beside"
              onClick={() => take({ name, kind, ...by[units] })}
            >
              Add {name.toLowerCase()}
            </button>
          ))}
          <button
            type="button"
            className="btn beside"
            onClick={() =>
              take({ name: `Material ${materials.length + 1}`, kind: 'other', unit: 'each', packageSize: 1 })
            }
          >
            Add another material
          </button>
          <p className="told">
            They begin with {materialStarts.map(({ name, source }) => `${name.toLowerCase()}, ${source}`).join('; ')}.
            Type what the label says: the label rules.
          </p>
        </div>
      </Fold>
    </section>
  )
}
