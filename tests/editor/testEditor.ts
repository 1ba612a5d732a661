/** Drives the real editor without a browser: a hand on the plan and keys, in meters and typed words. */
import { printMeasures } from '../../core/units/printMeasures'
import { emptySite } from '../../renderer/app/emptySite'
import type { ActionId, Options } from '../../renderer/editor/actions/actions'
import { createEditor } from '../../renderer/editor/editor'
import { currentDocument } from '../../renderer/store/history'
import { createSiteStore, shownDocument } from '../../renderer/store/siteStore'
import { createViewStore } from '../../renderer/store/viewStore'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'

export class TestEditor {
  readonly store = createSiteStore()
  readonly view = createViewStore()
  readonly editor = createEditor({ site: this.store, view: this.view })
  /** 100 px to the meter: the pointer is held within 80 mm. */
  zoom = 100
  private pressed = false
  private moved = false

  constructor(site: Site = emptySite('test', 'Test')) {
    this.store.open(site)
  }

  get site(): Site {
    return currentDocument(this.store.getState().history!)
  }
  get shown(): Site {
    return shownDocument(this.store.getState())!
  }
  get state() {
    return this.editor.getState()
  }
  get selection(): readonly string[] {
    return this.view.getState().selection
  }

  choose(action: ActionId, options: Partial<Options> = {}): this {
    this.editor.choose(action)
    if (Object.keys(options).length > 0) this.editor.setOptions(options)
    return this
  }
  pointerDown(at: Pt): this {
    this.pressed = true
    this.moved = false
    this.editor.down(at, { zoom: this.zoom })
    return this
  }
  pointerMove(at: Pt, free = false): this {
    this.moved = this.pressed
    this.editor.move(at, { zoom: this.zoom, free, pressed: this.pressed })
    return this
  }
  pointerUp(at: Pt): this {
    this.editor.up(at, { zoom: this.zoom }, this.moved)
    this.pressed = false
    return this
  }
  click(at: Pt): this {
    return this.pointerMove(at).pointerDown(at).pointerUp(at)
  }
  drag(from: Pt, to: Pt): this {
    return this.pointerDown(from).pointerMove(to).pointerUp(to)
  }
  /** A finger comes down, slides along the points and is lifted at the last. */
  slide(...points: readonly [Pt, ...Pt[]]): this {
    const hand = { zoom: this.zoom, touch: true }
    this.editor.down(points[0], hand)
    for (const at of points.slice(1)) this.editor.move(at, { ...hand, pressed: true })
    this.editor.up(points.at(-1)!, hand, points.length > 1)
    return this
  }
  /** Types into the boxes in order, then Enter. */
  type(...texts: readonly string[]): this {
    texts.forEach((text, i) => {
      const field = this.state.drawing?.fields[i]
      if (field && text !== '') this.editor.write(field.id, text)
    })
    this.editor.enter()
    return this
  }
  key(key: 'Enter' | 'Escape' | 'Backspace' | 'Delete'): this {
    if (key === 'Enter') this.editor.enter()
    else if (key === 'Escape') this.editor.escape()
    else if (!this.editor.back()) this.editor.remove()
    return this
  }

  readonly print = printMeasures('ftin')
}
