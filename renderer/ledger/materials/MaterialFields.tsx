import { changeMaterial, removeMaterial, setOnHand } from '../../../core/document/commands/setMaterials'
import { siteRetarder } from '../../../core/pours/day/retarder'
import { isBulk, isCountedBulk } from '../../../core/quantities/bulkPrice'
import { goesByArea } from '../../../core/quantities/materials'
import { areaUnits } from '../../../core/units/areaUnits'
import { printNumber } from '../../../core/units/printNumber'
import type { Material } from '../../../shared/document/materials'
import type { Site } from '../../../shared/document/site'
import { applyEdit, takeEdit } from '../../app/applyEdit'
import { useSession } from '../../app/session'
import { AmountField } from '../../day/AmountField'
import { TypedField } from '../../pours/TypedField'
import { ChoiceField } from '../../slab/ChoiceField'
import { siteCurrency } from '../siteCurrency'
import { moneyRefused, parseAmountOf, parseFigure, parseMoney, printAmount, rateArea, shownUnit } from './amounts'

const kindWords: readonly (readonly [Material['kind'], string])[] = [
  ['hardener', 'Color hardener'],
  ['release', 'Release'],
  ['sealer', 'Sealer'],
  ['integralColor', 'Integral color'],
  ['retarder', 'On-site retarder'],
  ['base', 'Base'],
  ['reinforcement', 'Reinforcement'],
  ['concrete', 'Concrete'],
  ['other', 'Other'],
]

const wasteScale = { unit: '%', by: 100, least: 0, most: 100 }

/** One material: the boxes of its label, its price, its stock. */
export function MaterialFields({
  site,
  material,
  onRemoved,
}: {
  readonly site: Site
  readonly material: Material
  readonly onRemoved: () => void
}) {
  const session = useSession()
  const { id, name, kind, unit, packageSize, wasteShare, packagePrice, lot } = material
  const { units } = site
  const shown = shownUnit(unit, units)
  const change = (what: string, patch: Parameters<typeof changeMaterial>[1]) =>
    takeEdit(session, `material ${what}`, changeMaterial(id, patch))
  const onHand = site.stock?.find(({ materialId }) => materialId === id)?.onHand
  return (
    <fieldset className="finish material">
      <legend>{name}</legend>
      <TypedField label="Name" text={name} onText={typed => change('name', { name: typed.trim() })} />
      <ChoiceField label="What it is" value={kind} choices={kindWords} onSet={to => change('kind', { kind: to })} />
      <TypedField
        label="A package holds"
        text={`${printAmount(packageSize * shown.by)} ${shown.name}`}
        onText={typed => {
          const read = parseAmountOf(typed)
          if (read === null) return `“${typed}” is not taken: an amount and its unit, 60 lb or 5 gal.`
          return change('package', { packageSize: read.value, unit: read.unit })
        }}
      />
      {goesByArea(material) ? <RateFields {...{ site, material, change }} /> : null}
      {goesByArea(material) ? (
        <AmountField
          label="Waste"
          value={wasteShare}
          scale={wasteScale}
          places={1}
          onSet={share => change('waste', { wasteShare: share })}
        />
      ) : null}
      <TypedField
        label="Price of a package"
        text={packagePrice ? `${printNumber(packagePrice.amount, 2, 2)} ${packagePrice.currency}` : ''}
        onText={typed => {
          if (typed.trim() === '') return change('price', { packagePrice: undefined })
          const read = parseMoney(typed, siteCurrency(site))
          return read === null ? moneyRefused(typed, siteCurrency(site)) : change('price', { packagePrice: read })
        }}
      />
      <TypedField
        label="Packages on hand"
        text={onHand === undefined ? '' : printNumber(onHand / packageSize, 2)}
        onText={typed => {
          if (typed.trim() === '') return takeEdit(session, 'stock', setOnHand(id, undefined))
          const read = parseFigure(typed)
          return read === null || read.rest !== ''
            ? `“${typed}” is no count of packages.`
            : takeEdit(session, 'stock', setOnHand(id, read.value * packageSize))
        }}
      />
      <TypedField
        label="Lot"
        text={lot ?? ''}
        onText={typed => change('lot', { lot: typed.trim() === '' ? undefined : typed.trim() })}
      />
      {goesByArea(material) ? null : <p className="told">{countedWords(site, material)}</p>}
      <button
        type="button"
        className="btn"
        onClick={() => {
          if (applyEdit(session, 'material', removeMaterial(id))) onRemoved()
        }}
      >
        Remove {name}
      </button>
    </fieldset>
  )
}

/** How a material is counted that does not go by the area. */
function countedWords(site: Site, material: Material): string {
  const { kind } = material
  if (kind === 'retarder')
    return siteRetarder(site)?.id === material.id
      ? 'Counted dose by dose; the doses of its label are typed in Log under Retarder.'
      : 'Not counted: doses are in another retarder of the list.'
  if (kind === 'reinforcement') return 'Not counted: take it off by hand, and price it as a line of the price list.'
  const isConcrete = kind === 'concrete'
  if (!isBulk(material))
    return isConcrete
      ? 'Not counted: a package of concrete is a volume, 1 yd³ or 1 m³.'
      : 'Not counted: a package of base is a mass or volume, 1 ton, 1 t, 1 yd³ or 1 m³.'
  if (!isCountedBulk(material, site.materials ?? [])) return `Not counted: all ${kind} is in the first of the list.`
  return isConcrete
    ? 'Counted as it is ordered, pour by pour and for steps.'
    : 'Counted as the base of all slabs, bought whole.'
}

/** The rate from either end: what an area takes, or what a package covers. */
function RateFields({
  site: { units },
  material: { unit, packageSize, ratePerM2 = 0 },
  change,
}: {
  readonly site: Site
  readonly material: Material
  readonly change: (what: string, patch: Parameters<typeof changeMaterial>[1]) => string | null
}) {
  const shown = shownUnit(unit, units)
  const per = rateArea[units]
  const area = areaUnits[units]
  return (
    <>
      <TypedField
        label={`${per.name} takes, ${shown.name}`}
        text={ratePerM2 === 0 ? '' : printAmount(ratePerM2 * per.m2 * shown.by)}
        onText={typed => {
          if (typed.trim() === '') return change('rate', { ratePerM2: undefined })
          const read = parseAmountOf(/[a-z]/i.test(typed) ? typed : `${typed} ${shown.name}`)
          if (read === null || read.unit !== unit) return `“${typed}” is no amount in ${shown.name}.`
          return change('rate', { ratePerM2: read.value / per.m2 })
        }}
      />
      <TypedField
        label={`A package covers, ${area.name}`}
        text={ratePerM2 === 0 ? '' : printAmount(packageSize / ratePerM2 / area.m2)}
        onText={typed => {
          if (typed.trim() === '') return change('rate', { ratePerM2: undefined })
          const read = parseFigure(typed)
          if (!read || !(read.value > 0) || !['', area.name, area.name.replace('²', '2')].includes(read.rest))
            return `“${typed}” is no area over zero.`
          return change('rate', { ratePerM2: packageSize / (read.value * area.m2) })
        }}
      />
    </>
  )
}
