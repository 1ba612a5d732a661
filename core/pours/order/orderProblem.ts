/** The pours as a puzzle of numbers: who touches whom, who can be reached, what each day asks. */
import type { OrderSun } from './dayTurns'

export interface OrderWay {
  /** Pours in front of it, with the width each leaves passable (m). */
  readonly fronts: readonly { readonly pour: number; readonly widthM: number }[]
  /** Width that must stay passable (m). */
  readonly leastM: number
}

export interface OrderProblem {
  readonly count: number
  /** Pours that share a joint. */
  readonly next: readonly (readonly number[])[]
  /** Pours that can be stepped on from open ground or through a way. */
  readonly open: readonly boolean[]
  /** Pours that meet open ground. */
  readonly onGround: readonly boolean[]
  /** Share of one crew's day, > 0 and ≤ 1. */
  readonly load: readonly number[]
  /** Crews' days that one day holds. */
  readonly perDay: number
  /** From the nearest truck (m); only differences count. */
  readonly haulM: readonly number[]
  /** For each pour, those that must lie on earlier days. */
  readonly after: readonly (readonly number[])[]
  /** Day numbers of the days that take a pour, rising; at least one. */
  readonly days: readonly number[]
  /** A neighbor is at least this many days old, ≥ 1. */
  readonly neighborAge: number
  /** A pour may be walked over from this many days on, ≥ 1. */
  readonly crossAge: number
  readonly ways: readonly OrderWay[]
  /** For each day and way: closed by pours in front of it that are younger than this many days; 0 = not needed then. */
  readonly closedBelow: readonly (readonly number[])[]
  /** Sun by the hour at which a pour starts; left out where all start alike. */
  readonly sun?: OrderSun
  /** Poured already, with the day number. */
  readonly poured: readonly { readonly pour: number; readonly day: number }[]
}
