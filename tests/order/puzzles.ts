import type { OrderProblem } from '../../core/pours/order/orderProblem'

/** Working days Monday to Friday from a Monday on. */
export const weekdays = (count: number): number[] =>
  Array.from({ length: count }, (_, d) => 4 + d + 2 * Math.floor(d / 5))

/** A grid of pours, open along its lower edge; the trucks stand before it. */
export function gridPuzzle(wide: number, deep: number, more: Partial<OrderProblem> = {}): OrderProblem {
  const count = wide * deep
  const next = Array.from({ length: count }, (_, i) => [
    ...(i % wide > 0 ? [i - 1] : []),
    ...(i % wide < wide - 1 ? [i + 1] : []),
    ...(i >= wide ? [i - wide] : []),
    ...(i < count - wide ? [i + wide] : []),
  ])
  const days = more.days ?? weekdays(4 * count + 20)
  const ways = more.ways ?? []
  return {
    count,
    next,
    open: next.map((_, i) => i < wide),
    onGround: next.map((_, i) => i < wide),
    load: next.map(() => 1),
    perDay: 1,
    haulM: next.map((_, i) => 10 * Math.floor(i / wide) + (i % wide)),
    after: next.map(() => []),
    days,
    neighborAge: 1,
    crossAge: 1,
    ways,
    closedBelow: days.map(() => ways.map(() => 2)),
    poured: [],
    ...more,
  }
}

/** A connected puzzle of n pours, some of them open to the ground, with doors. */
export function randomPuzzle(random: () => number, count: number, perDay: number, age: number): OrderProblem {
  const next: number[][] = Array.from({ length: count }, () => [])
  const join = (a: number, b: number): void => {
    if (a === b || next[a]!.includes(b)) return
    next[a]!.push(b)
    next[b]!.push(a)
  }
  for (let i = 1; i < count; i++) join(i, Math.floor(random() * i))
  for (let k = 0; k < count / 2; k++) join(Math.floor(random() * count), Math.floor(random() * count))
  const onGround = next.map((_, i) => i === 0 || random() < 0.3)
  const ways = Array.from({ length: Math.floor(random() * 3) }, () => ({
    fronts: [{ pour: Math.floor(random() * count), widthM: 2 }],
    leastM: 0.9,
  }))
  const days = weekdays(6 * count + 20)
  return {
    count,
    next,
    open: onGround.map((g, i) => g || ways.some(w => w.fronts[0]!.pour === i)),
    onGround,
    load: next.map(() => 1),
    perDay,
    haulM: next.map(() => Math.round(random() * 50)),
    after: next.map((_, i) => (random() < 0.15 && i > 0 ? [Math.floor(random() * i)] : [])),
    days,
    neighborAge: age,
    crossAge: age,
    ways,
    closedBelow: days.map(() => ways.map(() => 2)),
    poured: [],
  }
}

/** The same with sun by the hour: `turns` starts a day for each of the crews, pours drawn at random. */
export function withSun(p: OrderProblem, random: () => number, crews: number, turns: number): OrderProblem {
  const starts = Array.from({ length: turns }, (_, turn) => turn)
  return {
    ...p,
    sun: {
      crews,
      startOf: p.days.map(() => starts),
      extraH: p.next.map(() => {
        const hours = starts.map(() => 8 * random())
        const least = Math.min(...hours)
        return hours.map(own => own - least)
      }),
    },
  }
}
