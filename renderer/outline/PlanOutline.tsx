import { useMemo } from 'react'
import { Collection, Header, ListBox, ListBoxItem, ListBoxSection, type Selection, Text } from 'react-aria-components'
import { printMeasures } from '../../core/units/printMeasures'
import { Icon } from '../app/Icon'
import { usePlan, useSession, useView } from '../app/session'
import { outlineSections } from './outlineOf'

/** The plan as a list, in step with what is selected on the canvas: one tab stop, arrows inside. */
export function PlanOutline() {
  const { view } = useSession()
  const { live, pours } = usePlan(({ live, parts }) => ({ live, pours: parts.pours }))
  const { stage, selection, outlineShown } = useView(({ stage, selection, outlineShown }) => ({
    stage,
    selection,
    outlineShown,
  }))
  const sections = useMemo(
    () => (live ? outlineSections(live, stage === 'pours' ? pours : undefined, printMeasures(live.site.units)) : []),
    [live, pours, stage],
  )
  const select = (keys: Selection) => {
    if (keys !== 'all') view.setState({ selection: [...keys].map(String) })
  }
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
      <div className="plan-outline-list">
        <ListBox
          aria-label="Outline of the plan"
          items={sections}
          selectionMode="multiple"
          selectionBehavior="replace"
          selectedKeys={selection}
          onSelectionChange={select}
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
      </div>
    </div>
  )
}
