import { addMaterial, changeMaterial, setOnHand } from '../../core/document/commands/setMaterials'
import { siteRetarder } from '../../core/pours/day/retarder'
import { cubicYardsToM3 } from '../../core/units/convert'
import { printNumber } from '../../core/units/printNumber'
import type { Material } from '../../shared/document/materials'
import type { Site } from '../../shared/document/site'
import { applyEdit } from '../app/applyEdit'
import { useSession } from '../app/session'
import { TypedField } from '../pours/TypedField'

const figure = /^(\d+(?:\.\d+)?)\s*(.*)$/

const positiveNumber = (typed: string): number | null => {
  const found = figure.exec(typed.trim())
  const value = Number(found?.[1])
  return value > 0 && found?.[2] === '' ? value : null
}

/** The product that packages are counted with: package, label and stock. */
export function RetarderCard({ site }: { readonly site: Site }) {
  const session = useSession()
  const known = siteRetarder(site)
  const product = site.materials?.find(({ id }) => id === known?.id)
  const edit = (command: Parameters<typeof applyEdit>[2]): string | null =>
    applyEdit(session, 'retarder', command) ? null : session.view.getState().notice
  return (
    <section aria-label="Retarder" className="log-entry">
      <header>
        <h2>Retarder</h2>
        <span>{product ? 'product entered' : 'no product entered'}</span>
      </header>
      {product ? (
        <ProductFields site={site} product={product} onHand={known?.onHand} edit={edit} />
      ) : (
        <div className="note">
          <p>Packages are counted by the setting: one puts off 1 yd³ (0.76 m³) by 30 min unless it is changed there.</p>
          <TypedField
            label="Name of the product"
            text=""
            onText={typed => {
              const name = typed.trim()
              if (name === '') return null
              return edit(addMaterial({ name, kind: 'retarder', unit: 'package', packageSize: 1 }))
            }}
          />
        </div>
      )}
    </section>
  )
}

function ProductFields({
  site,
  product,
  onHand,
  edit,
}: {
  readonly site: Site
  readonly product: Material
  readonly onHand: number | undefined
  readonly edit: (command: Parameters<typeof applyEdit>[2]) => string | null
}) {
  const { id, name, unit, packageSize, label } = product
  const perM3 = site.units === 'ftin' ? cubicYardsToM3(1) : 1
  const per = site.units === 'ftin' ? 'yd³' : 'm³'
  const change = (patch: Partial<Pick<Material, 'name' | 'unit' | 'packageSize' | 'label'>>) =>
    edit(changeMaterial(id, patch))
  const doses = label ? `${printNumber(label.leastPerM3 * perM3, 3)} to ${printNumber(label.mostPerM3 * perM3, 3)}` : ''
  return (
    <div className="note retarder-fields">
      <TypedField
        label="Name of the product"
        text={name}
        onText={typed => (typed.trim() === '' ? 'A name is needed.' : change({ name: typed.trim() }))}
      />
      <TypedField
        label="A package holds"
        text={`${printNumber(packageSize, 3)} ${unit}`}
        onText={typed => {
          const found = figure.exec(typed.trim())
          const size = Number(found?.[1])
          if (!(size > 0) || !found?.[2]) return `“${typed}” is not taken: an amount and its unit, 8 oz.`
          return change({ packageSize: size, unit: found[2] })
        }}
      />
      <TypedField
        label="Packages on hand"
        text={onHand === undefined ? '' : String(onHand)}
        onText={typed => {
          if (typed.trim() === '') return edit(setOnHand(id, undefined))
          const count = Number(typed)
          if (!Number.isInteger(count) || count < 0) return `“${typed}” is no count of packages.`
          return edit(setOnHand(id, count * packageSize))
        }}
      />
      <TypedField
        label={`Label: least to most, ${unit} for 1 ${per}`}
        text={doses}
        onText={typed => {
          if (typed.trim() === '') return edit(changeMaterial(id, { label: undefined }))
          const [least, most] = typed.split(/\s*(?:to|–|-)\s*/).map(positiveNumber)
          if (!least || !most || most < least) return `“${typed}” is not taken: least and most, 4 to 8.`
          const leastBuysMin = label?.leastBuysMin ?? defaultMin
          return change({ label: { leastPerM3: least / perM3, mostPerM3: most / perM3, leastBuysMin } })
        }}
      />
      {label ? (
        <TypedField
          label="The least dose puts off, min"
          text={printNumber(label.leastBuysMin, 0)}
          onText={typed => {
            const min = positiveNumber(typed)
            return min === null
              ? `“${typed}” is no number of minutes.`
              : change({ label: { ...label, leastBuysMin: min } })
          }}
        />
      ) : null}
      <p>
        {label
          ? 'Packages on the day sheet and at the slab are counted by this label.'
          : 'Type the doses of its label; until then packages are counted by the setting.'}{' '}
        The label and the producer rule.
      </p>
    </div>
  )
}

/** Until the label's own minutes are typed in: as the setting has it. */
const defaultMin = 30
