import { useDeferredValue, useMemo, useRef } from 'react'
import { Collection, Header, ListBox, ListBoxItem, ListBoxSection, type Selection, Text } from 'react-aria-components'
import { printMeasures } from '../../core/units/printMeasures'
import { Icon } from '../app/Icon'
import { usePlan, useSession, useSite, useView } from '../app/session'
import { keepRows } from './keepRows'
import { type OutlineSection, outlineSections } from './outlineOf'

/** The plan as a list, in step with what is selected on the canvas: one tab stop, arrows inside. */
export function PlanOutline() {
  const { view } = useSession()
  const { live, pours } = usePlan(({ live, parts }) => ({ live, pours: parts.pours }))
  const { stage, selection, outlineShown } = useView(({ stage, selection, outlineShown }) => ({
    stage,
    selection,
    outlineShown,
  }))
  // While a gesture is in hand the list stays as it was: a row read aloud must not change at every move.
  const isInHand = useSite(state => state.preview !== null)
  const settled = useRef(live)
  if (!isInHand || live?.site.id !== settled.current?.site.id) settled.current = live
  const listed = settled.current
  const shownPours = stage === 'pours' ? pours : undefined
  const kept = useRef<readonly OutlineSection[]>([])
  const latest = useMemo(() => {
    const now = listed ? outlineSections(listed, shownPours, printMeasures(listed.site.units)) : []
    kept.current = keepRows(kept.current, now)
    return kept.current
  }, [listed, shownPours])
  // The canvas goes first: a long list follows it when there is time.
  const sections = useDeferredValue(latest)
  const list = useMemo(
    () => (
      <ListBox
        aria-label="Outline of the plan"
        items={sections}
        selectionMode="multiple"
        selectionBehavior="replace"
        selectedKeys={selection}
        onSelectionChange={(keys: Selection) => {
          if (keys !== 'all') view.setState({ selection: [...keys].map(String) })
        }}
        renderEmptyState={() => 'Nothing drawn yet.'}
      >
        {section => (
          <ListBoxSection id={section.id}>
            <Header>{section.name}</Header>
            <Collection items={section.items}>
              {item => (
                <ListBoxItem id={item.id} textValue={item.name}>
                  <Text slot="label">{item.name}</Text>
                  <Text slot="description">{item.detail}</Text>
                </ListBoxItem>
              )}
            </Collection>
          </ListBoxSection>
        )}
      </ListBox>
    ),
    [sections, selection, view],
  )
  return (
    <div className="plan-outline" data-shown={outlineShown || undefined}>
      <button
        type="button"
        className="btn"
        aria-expanded={outlineShown}
        onClick={() => view.setState({ outlineShown: !outlineShown })}
      >
        <Icon name="outline" />
        Outline
      </button>
      <div className="plan-outline-list">{list}</div>
    </div>
  )
}
