import { useRef } from 'react'
import type { Pt } from '../../shared/document/primitives'
import { wordFindings } from '../app/applyEdit'
import { useSession } from '../app/session'
import { currentDocument } from '../store/history'
import { dragJoint, gripAt, type JointGrip } from './jointHand'

/** Drags joints in the pours stage: previews on the way, one named step at the end. */
export function useJointHand() {
  const { site, view, plan } = useSession()
  const grip = useRef<JointGrip | null>(null)
  return {
    /** True where a joint was taken. */
    down(at: Pt, zoom: number): boolean {
      const { stage, clientView } = view.getState()
      if (stage !== 'pours' || clientView) return false
      grip.current = gripAt(plan.getState().parts.joints ?? [], at, zoom)
      return grip.current !== null
    },
    move(at: Pt): void {
      const held = grip.current
      const { history } = site.getState()
      if (!held || !history) return
      const document = currentDocument(history)
      const result = dragJoint(held, at)(document)
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
    cancel(): void {
      if (grip.current) site.drop()
      grip.current = null
    },
  }
}
