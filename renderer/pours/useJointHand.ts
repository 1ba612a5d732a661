import { useRef } from 'react'
import { capsOf } from '../../core/plan/capsOf'
import type { PlannedJoint } from '../../core/plan/plan'
import { rotateJoint, shiftJoint } from '../../core/pours/editing/moveJoint'
import type { Pt } from '../../shared/document/primitives'
import { applyEdit } from '../app/applyEdit'
import { arrowKeys } from '../app/arrowKeys'
import { useSession } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import { committedDocument } from '../store/siteStore'
import { dragJoint, gripAt, isKept, type JointGrip } from './jointHand'
import { livePours } from './livePours'

interface HandKey {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
}

/** Drags joints in the pours stage: previews on the way, one named step at the end. */
export function useJointHand() {
  const session = useSession()
  const { site, view, plan } = session
  const grip = useRef<JointGrip | null>(null)
  /** As they are drawn now: the worker's may be a drag behind. */
  const shownJoints = (): readonly PlannedJoint[] => {
    const { live, parts } = plan.getState()
    return live ? livePours(live, parts.pours ?? [], parts.joints ?? []).joints : []
  }
  return {
    /** True where a joint was taken. */
    down(at: Pt, zoom: number): boolean {
      const { stage, clientView } = view.getState()
      if (stage !== 'pours' || clientView) return false
      grip.current = gripAt(shownJoints(), at, zoom)
      return grip.current !== null
    },
    move(at: Pt): void {
      const held = grip.current
      const document = committedDocument(site.getState())
      if (!held || !document) return
      const result = dragJoint(held, at)(document, capsOf(document, plan.getState().parts.capacities ?? []))
      view.setState({ notice: wordFindings(document, result.ok ? result.findings : result.error) || null })
      if (result.ok) site.show(() => result.value)
    },
    up(hasMoved: boolean): void {
      const held = grip.current
      grip.current = null
      if (!held) return
      if (hasMoved) site.keep(held.by === 'line' ? 'joint shifted' : 'joint turned')
      view.setState({ selection: [held.jointId] })
    },
    /** Arrows push the chosen joint, with the control key they turn it; true where the key was the joint's. */
    key({ key, ctrlKey, metaKey, shiftKey }: HandKey, stepM: number): boolean {
      const { stage, clientView, selection } = view.getState()
      if (stage !== 'pours' || clientView) return false
      if (key === 'Escape' && grip.current) {
        grip.current = null
        site.drop()
        return true
      }
      const jointId = selection.at(-1)
      const joint = shownJoints().find(({ id, kind }) => id === jointId && kind === 'construction')
      const by = arrowKeys[key]
      if (!by || !joint || !isKept(joint)) return false
      if (ctrlKey || metaKey) {
        const turnDeg = (by[0] + by[1] > 0 ? -1 : 1) * (shiftKey ? 5 : 1)
        applyEdit(
          session,
          'joint turned',
          (document, caps) => rotateJoint(document, joint.id, turnDeg, undefined, caps),
          'push',
        )
        return true
      }
      const { from, to, lengthM } = joint
      const aside = (by[0] * -(to[1] - from[1]) + by[1] * (to[0] - from[0])) / lengthM
      // Pushed along itself a joint stays where it is.
      if (Math.abs(aside) > 0.2)
        applyEdit(
          session,
          'joint shifted',
          (document, caps) => shiftJoint(document, joint.id, Math.sign(aside) * stepM * (shiftKey ? 4 : 1), caps),
          'push',
        )
      return true
    },
    cancel(): void {
      if (grip.current) site.drop()
      grip.current = null
    },
  }
}

export type JointHand = ReturnType<typeof useJointHand>
