import type { Context } from 'konva/lib/Context'
import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore'
import { edgeBounds, joinBounds, pointBounds } from '../../core/geometry/bounds'
import { printMeasures } from '../../core/units/printMeasures'
import type { Caster } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import { Icon } from '../app/Icon'
import { printDate } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import type { ViewState } from '../store/viewStore'
import { type Inks, readInks } from '../theme/inks'
import { type Camera, fitBox, panBy, pinch, type Size, toPlan, zoomAt } from './camera/camera'
import { drawAccess, drawPoints } from './layers/drawAccess'
import { drawCasters, outlineOf } from './layers/drawCasters'
import { drawDimensions } from './layers/drawDimensions'
import { drawGround } from './layers/drawGround'
import { drawLit, drawSelection } from './layers/drawHandles'
import { drawCasterNames, drawSlabNames } from './layers/drawNames'
import { drawPlates, drawPours } from './layers/drawPours'
import { drawShade } from './layers/drawShade'
import { drawSlabEdges, drawSlabs } from './layers/drawSlabs'
import { labelRoom, type Rect } from './layers/labelRoom'
import type { Pen } from './layers/pen'
import { entityGeometry, figureGeometry } from './layers/planGeometry'
import { NorthMark } from './NorthMark'
import { pickAt } from './pickAt'
import { ScaleBar } from './ScaleBar'

/** Nearer than this a press that moved is still a click. */
const clickPx = 4
const pickPx = 8

function useSize(): readonly [(element: HTMLElement | null) => void, Size] {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 })
  const observer = useRef<ResizeObserver | null>(null)
  const ref = useCallback((element: HTMLElement | null) => {
    observer.current?.disconnect()
    observer.current = null
    if (!element) return
    observer.current = new ResizeObserver(() => {
      setSize({ width: element.clientWidth, height: element.clientHeight })
    })
    observer.current.observe(element)
  }, [])
  return [ref, size]
}

/** The theme's inks, read again when the theme changes and when the letters have come. */
function useInks(): Inks | null {
  const theme = useView(state => state.theme)
  const [inks, setInks] = useState<Inks | null>(null)
  useEffect(() => {
    let isGone = false
    const read = () => {
      if (!isGone) setInks(readInks(document.documentElement))
    }
    document.documentElement.dataset.theme = theme
    read()
    const faces = [
      '600 14px "Barlow Semi Condensed"',
      '500 14px "Barlow Semi Condensed"',
      '700 14px "Barlow Semi Condensed"',
      '700 34px "Zilla Slab Lining"',
    ]
    void Promise.all(faces.map(face => document.fonts.load(face))).then(read)
    return () => {
      isGone = true
    }
  }, [theme])
  return inks
}

/** The shade is in full where the stage is about it, and quiet where something else is. */
const shadeStrength: Readonly<Record<ViewState['stage'], number>> = {
  slab: 0.4,
  sun: 1,
  pours: 0.45,
  numbers: 0,
  sheets: 0.4,
  log: 0.4,
}

/** What stands over the plan in its corners: prompt and outline, north, scale bar, camera. */
const furniture = ({ width, height }: Size): readonly Rect[] => [
  { x: 0, y: 0, width: 132, height: 92 },
  { x: width - 96, y: 0, width: 96, height: 92 },
  { x: 0, y: height - 56, width: 290, height: 56 },
  { x: width - 200, y: height - 56, width: 200, height: 56 },
]

/** All that should be in view at first: slabs, and of what stands around them as much as does not make them small. */
function homeBox(live: LivePlan) {
  const slabs = joinBounds(live.slabs.flatMap(slab => slab.outline.map(edgeBounds)))
  if (slabs.minX > slabs.maxX) {
    return joinBounds(
      live.site.casters.flatMap(caster => {
        if (caster.kind === 'building') return outlineOf(caster.footprint).map(edgeBounds)
        if (caster.kind === 'cover') return outlineOf(caster.outline).map(edgeBounds)
        return [pointBounds(caster.kind === 'tree' ? [caster.at] : caster.line)]
      }),
    )
  }
  const room = 0.28 * Math.max(slabs.maxX - slabs.minX, slabs.maxY - slabs.minY)
  const trees = live.site.casters.flatMap(caster =>
    caster.kind === 'tree'
      ? [
          {
            minX: Math.max(slabs.minX - room, caster.at[0] - caster.crownRadiusM),
            maxX: Math.min(slabs.maxX + room, caster.at[0] + caster.crownRadiusM),
            minY: slabs.minY,
            maxY: slabs.maxY,
          },
        ]
      : [],
  )
  return joinBounds([slabs, ...trees.filter(box => box.minX <= box.maxX)])
}

/** The plan, drawn from the document on screen. Four canvases: ground, plan, shade, handles. */
export function PlanCanvas() {
  const { view } = useSession()
  const live = usePlan(state => state.live)
  if (!live) return null
  return <Sheet key={live.site.id} live={live} view={view} />
}

function Sheet({ live, view }: { readonly live: LivePlan; readonly view: ReturnType<typeof useSession>['view'] }) {
  const [ref, size] = useSize()
  const inks = useInks()
  const [camera, setCamera] = useState<Camera | null>(null)
  const { parts, isRenewing } = usePlan(({ parts, isRenewing }) => ({ parts, isRenewing }))
  const { stage, selection, openFigure, clientView } = useView(({ stage, selection, openFigure, clientView }) => ({
    stage,
    selection,
    openFigure,
    clientView,
  }))
  const box = useRef<HTMLDivElement | null>(null)
  const touched = useRef(false)
  const pointers = useRef(new Map<number, Pt>())
  const press = useRef<{ at: Pt; moved: boolean } | null>(null)

  const showAll = useCallback(() => {
    touched.current = false
    if (size.width > 0) setCamera(fitBox(homeBox(live), size, Math.min(96, size.height * 0.16)))
  }, [live, size])
  // Until the user moves the camera, the whole site stays in view whatever the window does.
  useEffect(() => {
    if (!touched.current) showAll()
  }, [showAll])

  const move = useCallback((change: (camera: Camera) => Camera) => {
    touched.current = true
    setCamera(was => (was ? change(was) : was))
  }, [])

  const onWheel = useCallback(
    (event: WheelEvent) => {
      event.preventDefault()
      const rect = box.current?.getBoundingClientRect()
      if (!rect) return
      const at: Pt = [event.clientX - rect.left, event.clientY - rect.top]
      // A pinch on a touch pad comes as a wheel with the control key; two fingers alone pan where both axes move.
      const lines = event.deltaMode === 1 ? 16 : 1
      if (!event.ctrlKey && event.deltaX !== 0) move(c => panBy(c, -event.deltaX * lines, -event.deltaY * lines))
      else move(c => zoomAt(c, at, Math.exp((-event.deltaY * lines) / (event.ctrlKey ? 120 : 500))))
    },
    [move],
  )
  const attach = useCallback(
    (element: HTMLDivElement | null) => {
      box.current?.removeEventListener('wheel', onWheel)
      box.current = element
      element?.addEventListener('wheel', onWheel, { passive: false })
      ref(element)
    },
    [onWheel, ref],
  )

  const showsPours = stage === 'pours' && !clientView
  const nearest = (at: Pt): string | null =>
    camera === null
      ? null
      : pickAt(toPlan(camera, at), {
          live,
          nearM: pickPx / camera.zoom,
          ...(showsPours && parts.pours ? { pours: parts.pours } : {}),
          ...(showsPours && parts.joints ? { joints: parts.joints } : {}),
        })

  const localPoint = (event: PointerEvent<HTMLDivElement>): Pt => {
    const rect = event.currentTarget.getBoundingClientRect()
    return [event.clientX - rect.left, event.clientY - rect.top]
  }
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId)
    const at = localPoint(event)
    pointers.current.set(event.pointerId, at)
    press.current = pointers.current.size === 1 ? { at, moved: false } : null
  }
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    const before = pointers.current.get(event.pointerId)
    if (!before) return
    const at = localPoint(event)
    if (pointers.current.size === 2) {
      const other = [...pointers.current].find(([id]) => id !== event.pointerId)![1]
      move(c => pinch(c, [before, other], [at, other]))
    } else if (press.current) {
      const { at: start, moved } = press.current
      if (moved || Math.hypot(at[0] - start[0], at[1] - start[1]) > clickPx) {
        const from = moved ? before : start
        press.current = { at: start, moved: true }
        move(c => panBy(c, at[0] - from[0], at[1] - from[1]))
      }
    }
    pointers.current.set(event.pointerId, at)
  }
  const onPointerUp = (event: PointerEvent<HTMLDivElement>) => {
    pointers.current.delete(event.pointerId)
    const ended = press.current
    press.current = null
    if (!ended || ended.moved || event.type === 'pointercancel') return
    const id = nearest(ended.at)
    view.setState(({ selection: was }) => {
      if (id === null) return { selection: [] }
      if (!event.shiftKey) return { selection: [id] }
      return { selection: was.includes(id) ? was.filter(each => each !== id) : [...was, id] }
    })
  }
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const step = event.shiftKey ? 160 : 40
    const arrows: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [step, 0],
      ArrowRight: [-step, 0],
      ArrowUp: [0, step],
      ArrowDown: [0, -step],
    }
    const by = arrows[event.key]
    if (by) move(c => panBy(c, by[0], by[1]))
    else if (event.key === '+' || event.key === '=') zoomMiddle(1.25)
    else if (event.key === '-') zoomMiddle(0.8)
    else if (event.key === 'Escape') view.setState({ selection: [] })
    else return
    event.preventDefault()
  }
  const zoomMiddle = (factor: number) => move(c => zoomAt(c, [size.width / 2, size.height / 2], factor))

  const print = useMemo(() => printMeasures(live.site.units), [live.site.units])
  const plates = useMemo(
    () =>
      (parts.pours ?? []).map(pour => {
        const volume = parts.quantities?.find(q => q.pourId === pour.id && q.id.endsWith('-concrete-volume'))
        return {
          pour,
          lines: [
            print.area(pour.areaM2),
            ...(volume ? [print.volume(volume.value)] : []),
            pour.date === null ? `day ${pour.day}` : printDate(pour.date),
          ],
        }
      }),
    [parts.pours, parts.quantities, print],
  )
  const lit = useMemo(() => {
    const figure = parts.quantities?.find(q => q.id === openFigure)
    return figure ? figureGeometry(live, parts, figure) : null
  }, [live, parts, openFigure])
  const chosen = useMemo(() => selection.map(id => entityGeometry(live, parts, id)), [live, parts, selection])

  const draw = (paint: (pen: Pen) => void) => (context: Context) => {
    if (!camera || !inks) return
    paint({ ctx: context._context, camera, size, inks })
  }
  const isReady = camera !== null && inks !== null && size.width > 0
  const { site, slabs } = live

  return (
    <>
      <div
        className="sheet"
        ref={attach}
        role="application"
        aria-roledescription="plan"
        aria-label={`Plan of ${site.name}. Arrow keys move it, plus and minus change its scale. Its parts are listed in the outline.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application is moved by keys; its parts are in the outline
        tabIndex={0}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={onPointerUp}
        onKeyDown={onKeyDown}
      >
        {isReady ? (
          <Stage width={size.width} height={size.height} listening={false}>
            <Layer listening={false}>
              <Shape sceneFunc={draw(pen => drawGround(pen, site.units))} />
            </Layer>
            <Layer listening={false}>
              <Shape
                sceneFunc={draw(pen => {
                  const scene = {
                    slabs,
                    sources: site.slabs,
                    finishes: site.finishes,
                    inColor: clientView,
                    textured: !showsPours,
                  }
                  const isHouse = (caster: Caster) => caster.kind === 'building'
                  drawCasters(pen, site.casters.filter(isHouse))
                  drawSlabs(pen, scene)
                  if (showsPours) drawPours(pen, { plates, selection })
                  drawSlabEdges(pen, scene)
                  drawCasters(
                    pen,
                    site.casters.filter(caster => !isHouse(caster)),
                  )
                  if (site.access && !clientView) drawAccess(pen, site.access)
                })}
              />
            </Layer>
            <Layer listening={false}>
              <Shape
                sceneFunc={draw(pen =>
                  drawShade(pen, {
                    shade: live.shade,
                    slabs,
                    casters: site.casters,
                    strength: clientView ? 0.6 : shadeStrength[stage],
                  }),
                )}
              />
            </Layer>
            <Layer listening={false}>
              <Shape
                sceneFunc={draw(pen => {
                  const room = labelRoom({ x: 0, y: 0, ...size })
                  for (const corner of furniture(size)) room.block(corner)
                  if (lit) drawLit(pen, lit)
                  if (showsPours) drawPlates(pen, { plates, joints: parts.joints ?? [], selection })
                  if (stage === 'slab' || stage === 'numbers') drawDimensions(pen, slabs, print, room)
                  if (stage === 'slab' && !lit) drawSlabNames(pen, slabs, print, room)
                  if (stage === 'sun') drawPoints(pen, site.points)
                  drawCasterNames(pen, site.casters, print, room)
                  for (const geometry of chosen) drawSelection(pen, geometry)
                })}
              />
            </Layer>
          </Stage>
        ) : null}
      </div>
      <p className="say" role="status">
        {prompt(live, stage, showsPours && isRenewing)}
      </p>
      {camera ? <ScaleBar zoom={camera.zoom} units={site.units} /> : null}
      <NorthMark northDeg={site.place.northDeg} />
      <fieldset className="camera-acts" aria-label="Scale of the plan">
        <button type="button" className="btn" onClick={showAll}>
          <Icon name="fit" />
          Fit
        </button>
        <button type="button" className="btn only" aria-label="Nearer" title="Nearer" onClick={() => zoomMiddle(1.25)}>
          <Icon name="nearer" />
        </button>
        <button type="button" className="btn only" aria-label="Farther" title="Farther" onClick={() => zoomMiddle(0.8)}>
          <Icon name="farther" />
        </button>
      </fieldset>
    </>
  )
}

function prompt(live: LivePlan, stage: string, isWaiting: boolean): string {
  if (live.slabs.length === 0) return 'Type a length or click the first corner.'
  if (isWaiting) return 'Pours are being renewed.'
  if (stage === 'sun' && live.shade.length === 0) return 'The sun is down, or too low to throw a shadow that counts.'
  return ''
}
