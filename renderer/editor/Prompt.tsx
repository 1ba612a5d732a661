import { geometryCodes } from '../../shared/problem'
import { handWords } from '../app/handWords'
import { useCalmPlan, usePlan, useView } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import type { LivePlan } from '../store/livePlan'
import { actionWords } from './actions/actions'
import { promptWords } from './promptWords'
import { useEditorState } from './useEditor'

/** One line on what to do, or on what is not there to be seen. */
export function Prompt({ live }: { readonly live: LivePlan }) {
  const isDrawing = useView(({ stage, clientView }) => stage === 'slab' && !clientView)
  return isDrawing ? <DrawingPrompt live={live} /> : <StagePrompt live={live} />
}

/** What comes next of the drawing in hand; beside it what was refused, or what no slab can be. */
function DrawingPrompt({ live }: { readonly live: LivePlan }) {
  const { action, drawing, fault, words } = useEditorState(state => ({
    action: state.action,
    drawing: state.drawing,
    fault: state.fault,
    words: promptWords(state),
  }))
  const amiss = drawing
    ? undefined
    : live.slabs.flatMap(({ findings }) => findings).find(each => each.severity === 'stop')
  const wrong =
    fault && (!drawing || drawing.fields.length === 0) ? fault.message : amiss ? wordFindings(live.site, [amiss]) : ''
  const isRefusal = !fault?.isDone || wrong !== fault.message
  const doubt = useDoubt(live.site)
  return (
    <div className="say">
      <p role="status">
        {action === 'select' ? '' : <b>{actionWords[action]}</b>} {handWords(words)}
      </p>
      {wrong === '' ? null : (
        <p className={isRefusal ? 'fault' : 'doubt'} role={isRefusal ? 'alert' : 'status'}>
          {wrong}
        </p>
      )}
      {wrong === '' && !drawing && doubt ? (
        <p className="doubt" role="status">
          {doubt}
        </p>
      ) : null}
    </div>
  )
}

/** What is amiss with the thing that is chosen, as it was drawn: told here, too, since the eyes are on the plan. */
function useDoubt({ slabs }: LivePlan['site']): string | null {
  const problems = useCalmPlan(({ parts }) => parts.problems)
  const selection = useView(state => state.selection)
  const [id] = selection
  if (id === undefined || selection.length > 1) return null
  const slab = slabs.find(each => each.id === id)
  const parts = slab ? [slab, ...slab.openings, ...slab.borders, ...slab.bands, ...slab.insets] : [{ id }]
  const found = problems?.find(
    ({ code, severity, at }) =>
      severity !== 'note' &&
      parts.some(part => part.id === at?.entityId) &&
      // Of a slab much is told: what is amiss with its pours and its day belongs to those stages.
      (!slab || (geometryCodes as readonly string[]).includes(code)),
  )
  return found?.message ?? null
}

function StagePrompt({ live }: { readonly live: LivePlan }) {
  const { isRenewing, isDark } = usePlan(({ isRenewing, hour }) => ({
    isRenewing,
    isDark: hour?.shade.length === 0,
  }))
  const { stage, clientView } = useView(({ stage, clientView }) => ({ stage, clientView }))
  const words =
    live.slabs.length === 0
      ? 'Nothing is drawn yet.'
      : stage === 'pours' && !clientView && isRenewing
        ? 'Pours are being renewed.'
        : stage === 'sun' && isDark
          ? 'The sun is down or too low.'
          : ''
  return (
    <p className="say" role="status">
      {words}
    </p>
  )
}
