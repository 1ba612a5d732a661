/** The last answer of a part, for one that can bring it up to date instead of starting anew. */
export interface LastAnswer<T> {
  readonly inputs: readonly unknown[]
  readonly value: T
}

/**
 * Remembers the last answer of each part, one slot per entity. A part is computed again only when one of its inputs is
 * another object than last time; slots not asked for during a derivation are swept at its end.
 */
export interface Memo {
  part<T>(
    name: string,
    entityId: string,
    inputs: readonly unknown[],
    compute: (last: LastAnswer<T> | undefined) => T,
  ): T
  /** The last answer of a part if it was computed from these inputs. */
  known<T>(name: string, entityId: string, inputs: readonly unknown[]): T | undefined
  /** Forgets the slots that no call asked for since the last sweep. */
  sweep(): void
  /** How often each part was computed. */
  readonly computed: ReadonlyMap<string, number>
}

interface Slot {
  readonly inputs: readonly unknown[]
  readonly value: unknown
  asked: boolean
}

const sameInputs = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((input, i) => Object.is(input, b[i]))

export function createMemo(): Memo {
  const slots = new Map<string, Slot>()
  const computed = new Map<string, number>()
  return {
    computed,
    part<T>(
      name: string,
      entityId: string,
      inputs: readonly unknown[],
      compute: (last: LastAnswer<T> | undefined) => T,
    ): T {
      const key = `${name} ${entityId}`
      const slot = slots.get(key)
      if (slot && sameInputs(slot.inputs, inputs)) {
        slot.asked = true
        return slot.value as T
      }
      computed.set(name, (computed.get(name) ?? 0) + 1)
      const value = compute(slot as LastAnswer<T> | undefined)
      slots.set(key, { inputs, value, asked: true })
      return value
    },
    known<T>(name: string, entityId: string, inputs: readonly unknown[]): T | undefined {
      const slot = slots.get(`${name} ${entityId}`)
      if (!slot || !sameInputs(slot.inputs, inputs)) return undefined
      slot.asked = true
      return slot.value as T
    },
    sweep() {
      for (const [key, slot] of slots) {
        if (slot.asked) slot.asked = false
        else slots.delete(key)
      }
    },
  }
}

/** The same memo with slots of its own, for parts that a derivation works out twice from different inputs. */
export const memoWithin = (memo: Memo, scope: string): Memo => ({
  ...memo,
  part: (name, entityId, inputs, compute) => memo.part(name, `${scope} ${entityId}`, inputs, compute),
  known: (name, entityId, inputs) => memo.known(name, `${scope} ${entityId}`, inputs),
})
