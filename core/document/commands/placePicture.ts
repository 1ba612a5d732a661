/** How the picture under the plan lies: its scale, turn and place, each about a point that stays where it is. */
import type * as z from 'zod/mini'
import type { Pt } from '../../../shared/document/primitives'
import type { Picture, Site } from '../../../shared/document/site'
import { type Command, editSite, missing } from './editSite'

type PictureOf = z.infer<typeof Picture>

const change =
  (changed: (picture: PictureOf) => PictureOf | { readonly foundM: number; readonly what: string }): Command =>
  (site: Site) =>
    editSite(site, draft => {
      const { picture } = draft.place
      if (picture === undefined) return missing('picture', 'picture')
      const next = changed({ ...picture })
      if ('foundM' in next) return { code: 'badMeasure', severity: 'stop', values: { ...next } }
      draft.place.picture = next
      return undefined
    })

const wholeTurn = (deg: number): number => ((((deg + 180) % 360) + 360) % 360) - 180

/**
 * Two points seen on the picture are `trueM` apart in truth: it grows about the first of them until they are.
 * Refused where the points are one, or the distance is not greater than zero.
 */
export const scalePicture = (a: Pt, b: Pt, trueM: number): Command =>
  change(picture => {
    const readsM = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (!(readsM > 0)) return { foundM: readsM, what: 'distance between the two points' }
    if (!(trueM > 0 && Number.isFinite(trueM))) return { foundM: trueM, what: 'known distance' }
    const by = trueM / readsM
    return {
      ...picture,
      metersPerPixel: picture.metersPerPixel * by,
      originAt: [a[0] + (picture.originAt[0] - a[0]) * by, a[1] + (picture.originAt[1] - a[1]) * by],
    }
  })

/** Turns it `leftDeg` counter-clockwise about a point. */
export const turnPicture = (about: Pt, leftDeg: number): Command =>
  change(picture => {
    const angle = (leftDeg * Math.PI) / 180
    const [dx, dy] = [picture.originAt[0] - about[0], picture.originAt[1] - about[1]]
    return {
      ...picture,
      turnDeg: wholeTurn(picture.turnDeg + leftDeg),
      originAt: [
        about[0] + dx * Math.cos(angle) - dy * Math.sin(angle),
        about[1] + dx * Math.sin(angle) + dy * Math.cos(angle),
      ],
    }
  })

/** The smallest turn to the left, −90 < … ≤ 90, that lets the line a→b run `alongDeg` clockwise from up, either way. */
export const turnToRun = (a: Pt, b: Pt, alongDeg: number): number => {
  const runsDeg = (Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI
  const left = (((runsDeg - alongDeg) % 180) + 180) % 180
  return left > 90 ? left - 180 : left
}

/** What is seen at `from` is brought to `to`. */
export const movePicture = (from: Pt, to: Pt): Command =>
  change(picture => ({
    ...picture,
    originAt: [picture.originAt[0] + to[0] - from[0], picture.originAt[1] + to[1] - from[1]],
  }))

/** `fade` 0 = in full, 1 = not seen. */
export const fadePicture = (fade: number): Command => change(picture => ({ ...picture, fade }))
