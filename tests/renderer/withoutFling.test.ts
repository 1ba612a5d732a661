import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { withoutFling } from '../../renderer/app/withoutFling'

const texts = (ending: string) =>
  readdirSync('renderer', { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith(ending))
    .map(name => readFileSync(join('renderer', name), 'utf8'))
const move = () => new Event('touchmove', { cancelable: true })

describe('a drag without a fling', () => {
  it('has its moves prevented, not its beginning, as long as it stands', () => {
    const element = new EventTarget()
    const letGo = withoutFling(element)
    expect(element.dispatchEvent(move())).toBe(false)
    expect(element.dispatchEvent(new Event('touchstart', { cancelable: true }))).toBe(true)
    expect(element.dispatchEvent(new Event('touchmove'))).toBe(true)
    letGo()
    expect(element.dispatchEvent(move())).toBe(true)
  })

  it('is what everything has that a finger drags, so that the next tap is a click', () => {
    const css = texts('.css')
    const dragged = css.flatMap(text =>
      [...text.matchAll(/([^{}]+)\{[^{}]*touch-action: none/g)].map(
        ([, rule]) => rule!.trim().match(/\.([\w-]+)/)![1]!,
      ),
    )
    expect(dragged.length).toBeGreaterThanOrEqual(6)
    const parts = texts('.tsx')
    const begins = /withoutFling|useCarriedAside|usePlanCamera/
    expect(
      dragged.filter(name => !parts.some(text => begins.test(text) && text.includes(`className="${name}`))),
    ).toEqual([])
  })
})
