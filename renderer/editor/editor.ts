/** The editor of one page: pointer, boxes and keys in, previews and named edits out. It knows no element of the page. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import { copySelection, pasteFrom } from '../../core/document/commands/copySelection'
import { deleteSelection } from '../../core/document/commands/deleteSelection'
import type { Command } from '../../core/document/commands/editSite'
import { findEdge, findVertex } from '../../core/document/commands/findPath'
import { findLinePoint } from '../../core/document/commands/linePoints'
import { selectionBox } from '../../core/document/commands/lineUp'
import { moveSelection } from '../../core/document/commands/moveSelection'
import { chosenEntities } from '../../core/document/commands/siteEntities'
import { addBorder } from '../../core/document/commands/slabParts'
import { type Copied, readCopy, writeCopy } from '../../core/document/copyText'
import { parseLength } from '../../core/units/parseLength'
import { printMeasures } from '../../core/units/printMeasures'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'
import { commitEdit } from '../app/commitEdit'
import { wordFindings } from '../app/wordFindings'
import { currentDocument } from '../store/history'
import type { SiteStore } from '../store/siteStore'
import type { ViewStore } from '../store/viewStore'
import { type ActionId, actionWords, madeOf, type Options, startDrawing, usualOptions } from './actions/actions'
import type { Drawing, Field, Mark, Turn, Values } from './actions/drawing'
import { pickPoints } from './actions/pickPoints'
import { type Aim, aimAt, printedStep, wholeStep } from './aim'
import { cornersOfSite } from './cornerNames'
import { parseDirection, parseTurn } from './entry/directions'
import { pickEdge, pickHandle } from './pickPart'
import { type ShapeHandle, shapeHandle } from './shapeHandle'

/** What a form wants pointed out on the plan. */
export interface Picking {
  /** What each place is, in order. */
  readonly prompts: readonly string[]
  /** False where corners and edges must not pull the pointer: on a picture. */
  readonly catches: boolean
  /** What the places would come to, shown while the last one is aimed at. */
  readonly preview?: (points: readonly Pt[]) => Command | null
  readonly done: (points: readonly Pt[]) => void
}

export interface EditorState {
  readonly action: ActionId
  readonly options: Options
  readonly drawing: Drawing | null
  /** Places are pointed out for a form, with nothing drawn. */
  readonly picking: Picking | null
  /** The pointer, or the point the arrow keys carry; null while neither is on the plan. */
  readonly aim: Aim | null
  /** What is typed into the boxes, by their ids. */
  readonly typed: Readonly<Record<string, string>>
  /** The box that keys go to, whether or not it stands on the page yet; null while they go to the plan. */
  readonly box: number | null
  /** Why the last thing typed or drawn was refused, and which box it stood in. */
  readonly fault: { readonly field: string | null; readonly message: string } | null
  /** Edges chosen for a border. */
  readonly edges: readonly Id[]
  readonly mark: Mark | null
  /** Points tied by tape, in order; not in the document until a slab is drawn through them. */
  readonly traced: readonly Pt[]
  /** The aim is carried by the arrow keys. */
  readonly keyed: boolean
  /** The selection is being carried. */
  readonly carrying: boolean
  /** Something was copied, here or in a site that was open before. */
  readonly hasCopy: boolean
  /** What a screen reader is told. */
  readonly said: string
}

export interface Hand {
  /** Screen pixels per meter. */
  readonly zoom: number
  /** Catches nothing. */
  readonly free?: boolean
  /** The pointer is down. */
  readonly pressed?: boolean
  /** A finger: it hides what is under it, and cannot point without pressing. */
  readonly touch?: boolean
}

/** What is seldom placed only once. */
const repeats: ReadonlySet<ActionId> = new Set(['tree', 'access', 'furniture', 'note'])

const fresh: EditorState = {
  action: 'select',
  options: usualOptions,
  drawing: null,
  picking: null,
  aim: null,
  typed: {},
  box: null,
  fault: null,
  edges: [],
  mark: null,
  traced: [],
  keyed: false,
  carrying: false,
  hasCopy: false,
  said: '',
}

export type Editor = StoreApi<EditorState> & {
  choose(action: ActionId): void
  /** Asks for places on the plan; Esc, or any action, drops the question. */
  pick(picking: Picking): void
  setOptions(change: Partial<Options>): void
  setMark(mark: Mark): void
  /** True where the editor takes the pointer; false leaves it to choosing and to moving the plan. */
  down(at: Pt, hand: Hand): boolean
  move(at: Pt, hand: Hand): void
  up(at: Pt, hand: Hand, moved: boolean): void
  leave(): void
  /** A second finger came down: what the first one began is taken back. */
  cancel(): void
  /** The arrow keys carry the aim, from the last point or from `middle`. */
  carry(by: Pt, middle: Pt): void
  write(field: string, text: string): void
  /** The box that has the focus; null where the plan has it. */
  attend(box: number | null): void
  /** A key pressed while no box had the focus; true where it went to the boxes, which then have the keys. */
  key(key: string): boolean
  enter(): void
  /** True where there was something to take back. */
  back(): boolean
  escape(): void
  run(name: string, command: Command): boolean
  remove(): void
  nudge(by: Pt): void
  chooseEdges(ids: readonly Id[]): void
  trace(at: Pt): void
  untrace(): void
  drawTraced(): void
  /** Also as text for the clipboard; null where nothing is chosen. */
  copy(): string | null
  /** What was copied last, or a text off the clipboard: of this site beside it, of another one about `at`. */
  paste(text?: string, at?: Pt): void
}

export function createEditor({ site, view }: { readonly site: SiteStore; readonly view: ViewStore }): Editor {
  const store = createStore<EditorState>(() => fresh)
  let grab: { readonly start: Pt; readonly handle: Pt; readonly ids: readonly Id[] } | null = null
  let ring: ShapeHandle | null = null
  let copied: Copied | null = null
  let beforePress: Drawing | null = null
  /** A finger is aiming: the point is set where it is lifted. */
  let isAiming = false

  const committed = (): Site | null => {
    const { history } = site.getState()
    return history && currentDocument(history)
  }
  const selection = () => view.getState().selection
  const printer = () => printMeasures(committed()?.units ?? 'ftin')
  const refuse = (findings: readonly Finding[]) => {
    const now = committed()
    if (now) store.setState({ fault: { field: null, message: wordFindings(now, findings) } })
  }
  /** Shows what a command would make; a command that refuses shows the committed document. */
  const preview = (command: Command | null) => {
    const now = committed()
    const result = now && command?.(now)
    if (result?.ok) site.show(() => result.value)
    else if (site.getState().preview !== null) site.drop()
    return result
  }
  const commit = (name: string, command: Command): readonly Id[] | null => {
    const { made, words } = commitEdit(site, name, command)
    store.setState({
      ...(made ? { said: [`${name} done.`, words].join(' ').trim() } : {}),
      fault: words ? { field: null, message: words } : null,
    })
    return made
  }

  /** A typed start is measured from the chosen corner, else from the last mark, else from the first corner there is. */
  const markNow = (): Mark | null => {
    const now = committed()
    if (!now) return null
    const corners = cornersOfSite(now)
    const chosen = corners.find(({ id }) => selection().includes(id))
    const kept = store.getState().mark
    return chosen ?? (kept && corners.find(({ words }) => words === kept.words)) ?? corners[0] ?? null
  }
  const start = (action: ActionId, options: Options, mark = markNow()) => {
    isAiming = false
    store.setState({
      action,
      options,
      mark,
      drawing: startDrawing(action, options, mark),
      picking: null,
      typed: {},
      box: null,
      fault: null,
      edges: [],
    })
  }
  const aimed = (at: Pt, { zoom, free = false }: Hand): Aim => {
    const now = committed()
    const { drawing, picking } = store.getState()
    if (!now) return { at, caught: null }
    const never = grab ? grab.ids : []
    return aimAt(
      at,
      { site: now, zoom, selection: never, from: drawing?.from, placed: drawing?.placed ?? [], print: printer() },
      free || picking?.catches === false,
    )
  }

  const showDrawing = () => {
    const { drawing, aim, action, options, picking } = store.getState()
    const now = committed()
    if (!drawing || !now) return
    if (picking) {
      const points = aim ? [...drawing.placed, aim.at] : drawing.placed
      preview((points.length === picking.prompts.length && picking.preview?.(points)) || null)
      return
    }
    const sketch =
      drawing.phase === 'idle' && drawing.placed.length === 0 && action !== 'tree' && action !== 'furniture'
        ? null
        : drawing.sketch(aim?.at ?? null)
    preview(sketch && (madeOf(action, sketch, options, now, selection())?.command ?? null))
  }
  const showBorder = () => {
    const border = borderCommand()
    preview(border)
  }
  const take = ({ next, drawn, refused }: Turn) => {
    const { action, options } = store.getState()
    const now = committed()
    store.setState({ drawing: next, typed: {}, box: store.getState().box === null ? null : 0, fault: null })
    if (refused) {
      refuse(refused)
      return
    }
    if (!drawn || !now) {
      showDrawing()
      return
    }
    const { picking } = store.getState()
    if (picking) {
      site.drop()
      start('select', options)
      if (drawn.kind === 'line') picking.done(drawn.corners.map(({ at }) => at))
      return
    }
    const made = madeOf(action, drawn, options, now, selection())
    if (!made) {
      site.drop()
      store.setState({ fault: { field: null, message: 'Draw a slab first: this belongs to one.' } })
      return
    }
    const ids = commit(made.name, made.command)
    if (!ids) return
    store.setState({ aim: null })
    // What repeats goes on; what is shaped next is chosen.
    if (repeats.has(action)) {
      const isTyping = store.getState().box !== null
      start(action, options)
      if (isTyping) store.setState({ box: 0 })
    } else {
      start('select', options)
    }
    view.setState({ selection: ids.slice(0, 1) })
  }

  /** Rounds or bends to a whole measure; what has no room stays as it last fitted. */
  const shape = (handle: ShapeHandle, at: Pt, { zoom, free = false }: Hand) => {
    const now = committed()
    if (!now) return
    const stepM = free ? printedStep(now.units) : wholeStep(ringPull * zoom, now.units)
    const measureM = Math.round(handle.measure(at) / stepM) * stepM
    const result = handle.command(measureM)(now)
    if (!result.ok || !handle.fits(result.value)) return
    site.show(() => result.value)
    const rest = printer().length(Math.abs(measureM))
    store.setState({ aim: { at, caught: { relation: handle.words, rest } }, carrying: true })
  }

  const borderCommand = (): Command | null => {
    const { edges, options } = store.getState()
    const now = committed()
    const found = edges[0] === undefined || !now ? undefined : findEdge(now, edges[0])
    const slab =
      found && now?.slabs.find(s => s.outline.id === found.path.id || s.openings.some(o => o.path.id === found.path.id))
    if (!found || !slab || !now) return null
    const finishId = options.finishId ?? now.finishes.at(-1)?.id ?? ''
    const whole = found.path.edges.every(({ id }) => edges.includes(id))
    return addBorder(slab.id, {
      pathId: found.path.id,
      edges: whole ? 'all' : edges,
      widthM: options.widthM,
      finishId,
      placed: options.placed,
    })
  }

  const read = (field: Field, text: string) => {
    const units = committed()?.units ?? 'ftin'
    if (field.reads === 'length') return parseLength(text, units)
    return field.reads === 'turn' ? parseTurn(text) : parseDirection(text)
  }

  const editor: Editor = Object.assign(store, {
    choose(action: ActionId) {
      site.drop()
      start(action, store.getState().options)
      store.setState({ said: actionWords[action] })
    },
    pick(picking: Picking) {
      site.drop()
      start('select', store.getState().options)
      store.setState(({ mark }) => ({
        picking,
        drawing: pickPoints(picking.prompts, mark),
        said: picking.prompts[0] ?? '',
      }))
    },
    setOptions(change: Partial<Options>) {
      const { action, options, drawing } = store.getState()
      const next = { ...options, ...change }
      // A change of how the next edge runs must not cost the corners already set.
      if (drawing && drawing.placed.length > 0 && !('form' in change)) {
        const again = change.edge === undefined ? drawing : (drawing.withEdge?.(change.edge) ?? drawing)
        store.setState({ options: next, drawing: again })
        showDrawing()
        return
      }
      if (action === 'border' && next.strip === 'border') {
        store.setState({ options: next })
        showBorder()
        return
      }
      site.drop()
      start(action, next)
    },
    setMark(mark: Mark) {
      const { action, options } = store.getState()
      view.setState({ selection: [] })
      start(action, options, mark)
    },
    down(at: Pt, hand: Hand): boolean {
      const { drawing, action, options } = store.getState()
      const now = committed()
      if (!now || view.getState().stage !== 'slab') return false
      if (drawing) {
        const aim = aimed(at, hand)
        store.setState({ aim, keyed: false })
        if (hand.touch && (!drawing.byDrag || drawing.placed.length > 0)) {
          isAiming = true
          showDrawing()
          return true
        }
        beforePress = drawing
        take(drawing.press(aim.at))
        return true
      }
      if (action === 'border' && options.strip === 'border') {
        const edge = pickEdge(now, at, reachPx(hand, 12) / hand.zoom)
        if (edge) {
          const path = findEdge(now, edge)?.path
          const { edges } = store.getState()
          const kept = edges.filter(id => path?.edges.some(each => each.id === id))
          store.setState({ edges: kept.includes(edge) ? kept.filter(id => id !== edge) : [...kept, edge], fault: null })
          showBorder()
        }
        return true
      }
      if (action === 'select' && selection().length > 0) {
        ring = ringAt(now, selection(), at, hand)
        if (ring) return true
        const handle = pickHandle(now, selection(), at, reachPx(hand, 10) / hand.zoom)
        if (handle) {
          grab = { start: at, handle: handle.at, ids: handle.ids }
          return true
        }
      }
      return false
    },
    move(at: Pt, hand: Hand) {
      const { drawing } = store.getState()
      if (ring) {
        shape(ring, at, hand)
        return
      }
      if (grab) {
        const aim = aimed([grab.handle[0] + at[0] - grab.start[0], grab.handle[1] + at[1] - grab.start[1]], hand)
        store.setState({ aim, carrying: true })
        preview(moveSelection(grab.ids, [aim.at[0] - grab.handle[0], aim.at[1] - grab.handle[1]]))
        return
      }
      if (!drawing) {
        if (store.getState().aim) store.setState({ aim: null })
        return
      }
      const aim = aimed(at, hand)
      const dragged = beforePress && hand.pressed && !isAiming ? drawing.drag(aim.at) : drawing
      store.setState({ aim, drawing: dragged, keyed: false })
      showDrawing()
    },
    up(at: Pt, hand: Hand, moved: boolean) {
      const { drawing } = store.getState()
      if (ring) {
        if (moved) {
          shape(ring, at, hand)
          site.keep(ring.step)
        }
        ring = null
        store.setState({ carrying: false, aim: null })
        return
      }
      if (grab) {
        const ended = grab
        if (moved) {
          editor.move(at, hand)
          site.keep(movedName(ended.ids, committed()))
        }
        grab = null
        store.setState({ carrying: false, aim: null })
        return
      }
      if (isAiming && drawing) {
        isAiming = false
        const { at: to } = aimed(at, hand)
        store.setState({ aim: null })
        take(drawing.press(to))
        return
      }
      beforePress = null
      if (!drawing || !moved) return
      const aim = aimed(at, hand)
      store.setState({ aim })
      take(drawing.release(aim.at))
    },
    cancel() {
      site.drop()
      grab = null
      ring = null
      isAiming = false
      const drawing = beforePress ?? store.getState().drawing
      beforePress = null
      store.setState({ drawing, aim: null, carrying: false })
      showDrawing()
    },
    carry(by: Pt, middle: Pt) {
      const { drawing, aim } = store.getState()
      if (!drawing) return
      const from = aim?.at ?? drawing.placed.at(-1) ?? middle
      store.setState({ aim: { at: [from[0] + by[0], from[1] + by[1]], caught: null }, keyed: true })
      showDrawing()
    },
    leave() {
      if (!grab && !ring && !store.getState().keyed && store.getState().aim) {
        store.setState({ aim: null })
        showDrawing()
      }
    },
    write(field: string, text: string) {
      store.setState(({ typed }) => ({ typed: { ...typed, [field]: text }, fault: null }))
    },
    attend(box: number | null) {
      if (store.getState().box !== box) store.setState({ box })
    },
    key(key: string): boolean {
      const { drawing, box, typed } = store.getState()
      const fields = drawing?.fields ?? []
      const now = fields[box ?? 0]
      if (!now || view.getState().stage !== 'slab' || view.getState().clientView) return false
      const text = typed[now.id] ?? ''
      if (box === null) {
        if (!/^[\d.]$/.test(key)) return false
        editor.write(now.id, key)
        store.setState({ box: 0 })
      } else if (key.length === 1) editor.write(now.id, text + key)
      else if (key === 'Enter') editor.enter()
      else if (key === 'Escape') editor.escape()
      else if (key === 'Tab') store.setState({ box: (box + 1) % fields.length })
      else if (key === 'Backspace') {
        if (text === '') editor.back()
        else editor.write(now.id, text.slice(0, -1))
      } else return false
      return true
    },
    enter() {
      const { drawing, typed, aim, action, options } = store.getState()
      if (action === 'border' && options.strip === 'border') {
        const command = borderCommand()
        if (!command) return
        const ids = commit('border', command)
        if (ids) {
          start('select', options)
          view.setState({ selection: ids.slice(0, 1) })
        }
        return
      }
      if (!drawing) return
      const values: Record<string, number> = {}
      for (const field of drawing.fields) {
        const text = typed[field.id]?.trim() ?? ''
        if (text === '') continue
        const value = read(field, text)
        if (!value.ok) {
          store.setState({
            box: drawing.fields.indexOf(field),
            fault: { field: field.id, message: value.error.message },
          })
          return
        }
        values[field.id] = value.value
      }
      if (Object.keys(values).length > 0) {
        // What was typed has the word until the pointer moves again.
        store.setState({ aim: null, keyed: false })
        take(drawing.type(values as Values, aim?.at ?? null))
      } else {
        const { keyed } = store.getState()
        const turn = keyed ? { next: drawing } : drawing.finish()
        // Where nothing is there to be ended, Enter sets the point the arrow keys carry.
        if (!turn.drawn && aim) {
          store.setState({ keyed: false })
          take(drawing.press(aim.at))
        } else take(turn)
      }
    },
    back(): boolean {
      const { drawing } = store.getState()
      if (!drawing || drawing.placed.length === 0) return false
      store.setState({ drawing: drawing.back(), typed: {}, fault: null })
      site.drop()
      showDrawing()
      return true
    },
    escape() {
      const { drawing, action, options, typed, edges, picking } = store.getState()
      site.drop()
      if (grab || ring) {
        grab = null
        ring = null
        store.setState({ carrying: false, aim: null })
      } else if (Object.values(typed).some(text => text !== '')) {
        store.setState({ typed: {}, fault: null })
        showDrawing()
      } else if ((drawing && drawing.placed.length > 0) || edges.length > 0 || picking) start(action, options)
      else if (action !== 'select') start('select', options)
      else view.setState({ selection: [] })
    },
    run(name: string, command: Command): boolean {
      return commit(name, command) !== null
    },
    remove() {
      if (selection().length === 0) return
      if (commit('delete', deleteSelection(selection()))) view.setState({ selection: [] })
    },
    nudge(by: Pt) {
      if (selection().length > 0) commit('move', moveSelection(selection(), by))
    },
    chooseEdges(edges: readonly Id[]) {
      store.setState({ edges, fault: null })
      showBorder()
    },
    trace(at: Pt) {
      store.setState(({ traced }) => ({ traced: [...traced, at] }))
    },
    untrace() {
      store.setState(({ traced }) => ({ traced: traced.slice(0, -1) }))
    },
    drawTraced() {
      const { traced, options } = store.getState()
      const now = committed()
      const shape = { kind: 'corners', corners: traced.map(at => ({ at })) } as const
      const made = now && madeOf('slab', { kind: 'shape', shape }, options, now, [])
      const ids = made && commit(made.name, made.command)
      if (!ids) return
      store.setState({ traced: [] })
      start('select', options)
      view.setState({ selection: ids.slice(0, 1) })
    },
    copy() {
      const now = committed()
      if (!now || selection().length === 0) return null
      copied = { site: now, ids: [...selection()] }
      store.setState({ said: 'Copied.', hasCopy: true })
      return writeCopy(now, selection())
    },
    paste(text?: string, at?: Pt) {
      const now = committed()
      if (!now) return
      const read = text === undefined ? null : readCopy(text)
      if (read && !read.ok) {
        refuse(read.error)
        return
      }
      const from = read ? read.value : copied
      if (!from) return
      // Two feet aside, so that the copy is seen.
      const aside: Pt = [0.6096, -0.6096]
      const onto = now.slabs.find(({ id }) => selection().includes(id))?.id ?? now.slabs[0]?.id
      const box = selectionBox(from.site, from.ids)
      const by: Pt = at && box ? [at[0] - (box.minX + box.maxX) / 2, at[1] - (box.minY + box.maxY) / 2] : aside
      const made =
        from.site.id === now.id
          ? commit('copy', pasteHere(now, from, aside))
          : commit('paste', pasteFrom(from.site, from.ids, by, onto))
      if (made) view.setState({ selection: made })
    },
  })

  let shown: string | null = null
  /** Every site that is opened starts afresh; an empty sheet waits for the first slab. */
  function follow(): void {
    const opened = committed()
    if ((opened?.id ?? null) === shown) return
    shown = opened?.id ?? null
    grab = null
    ring = null
    store.setState({ ...fresh, hasCopy: copied !== null })
    if (opened && opened.slabs.length + opened.casters.length === 0) start('slab', usualOptions)
  }
  site.subscribe(follow)
  follow()
  return editor
}

/** In its own site a copy is made of what stands there now; what was deleted since comes out of the copy. */
const pasteHere = (now: Site, { site, ids }: Copied, by: Pt): Command =>
  chosenEntities(now, ids).length === ids.length ? copySelection(ids, by) : pasteFrom(site, ids, by)

/** Meters of radius for a meter of the hand at a right angle, 1/(√2 − 1). */
const ringPull = 2.4
/** How near on the screen something is taken hold of: a fingertip covers some 44 px. */
const reachPx = ({ touch }: Hand, px: number): number => (touch ? Math.max(px, 22) : px)

const ringAt = (site: Site, selection: readonly Id[], at: Pt, hand: Hand): ShapeHandle | null => {
  const handle = shapeHandle(site, selection, hand.zoom)
  return handle && Math.hypot(handle.at[0] - at[0], handle.at[1] - at[1]) * hand.zoom <= reachPx(hand, 14)
    ? handle
    : null
}

const movedName = (ids: readonly Id[], site: Site | null): string =>
  site && ids.every(id => findVertex(site, id))
    ? 'move corner'
    : ids.every(id => site && findLinePoint(site, id))
      ? 'move point'
      : 'move'
