import './slab.css'
import { setName } from '../../core/document/commands/setSite'
import type { Site } from '../../shared/document/site'
import { useView } from '../app/session'
import { useEditorState } from '../editor/useEditor'
import { ActionOptions } from './ActionOptions'
import { chosenParts } from './chosen/chosenParts'
import { NeededNameField } from './chosen/NameField'
import { SelectionPanel } from './chosen/SelectionPanel'
import { FinishForm } from './FinishForm'
import { NorthForm } from './north/NorthForm'
import { PasteButton } from './PasteButton'
import { PlacingForm } from './PlacingForm'
import { PictureForm } from './picture/PictureForm'
import { PlaceForm } from './place/PlaceForm'
import { WalkForm } from './walk/WalkForm'

/** What is being drawn, or what is chosen, with all that can be set about it. */
export function SlabForms({ site }: { readonly site: Site }) {
  return (
    <>
      <ActionOptions />
      <SelectionPanel site={site} />
    </>
  )
}

/** The site itself, where nothing is chosen. */
export function SiteForms({ site }: { readonly site: Site }) {
  const isIdle = useEditorState(({ drawing, picking }) => picking !== null || (drawing?.placed.length ?? 0) === 0)
  const isChosen = useView(state => chosenParts(site, state.selection) !== null)
  if (!isIdle || isChosen) return null
  return (
    <section className="slab-form" aria-label="The site">
      <details>
        <summary>Name of the site</summary>
        <div className="fields">
          <NeededNameField name={site.name} set={setName} label="Heads every sheet and drawing" step="site name" />
        </div>
      </details>
      <details>
        <summary>Place and time zone</summary>
        <PlaceForm site={site} />
      </details>
      <details>
        <summary>North</summary>
        <NorthForm site={site} />
      </details>
      <details>
        <summary>Picture under the plan</summary>
        <PictureForm site={site} />
      </details>
      <details>
        <summary>Chute and carts</summary>
        <PlacingForm site={site} />
      </details>
      <details>
        <summary>Patterns and colors</summary>
        <FinishForm site={site} />
      </details>
      <details>
        <summary>Field notes: edges walked in order</summary>
        <WalkForm site={site} />
      </details>
      <div className="fields">
        <PasteButton site={site} />
      </div>
    </section>
  )
}
