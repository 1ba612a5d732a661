/** Equivalent age: how much older the mix grows in an hour at one temperature than at the reference temperature. */
import { zeroCelsiusK } from './humidity'

/** J/mol K (CODATA 2018). */
const gasConstant = 8.314462618

/** 70 °F, the temperature at which the trade states setting times. */
export const referenceC = 190 / 9

/**
 * exp[−(Ea/R)(1/T − 1/Tr)]: the equivalent-age function of ASTM C1074 (P. Freiesleben Hansen and E. J. Pedersen, Nordisk
 * Betong, 1977). 1 at the reference temperature. Nurse–Saul maturity is not used: it is too flat on hot days.
 *
 * @param activationJMol apparent activation energy; 33,500…45,000 in print
 */
export const ageRate = (tempC: number, activationJMol: number, atC: number = referenceC): number =>
  Math.exp((activationJMol / gasConstant) * (1 / (atC + zeroCelsiusK) - 1 / (tempC + zeroCelsiusK)))

/** Sum over spans of steady temperature; hours in, hours at the reference temperature out. */
export const equivalentAge = (
  spans: readonly { readonly tempC: number; readonly hours: number }[],
  activationJMol: number,
  atC: number = referenceC,
): number => spans.reduce((age, span) => age + span.hours * ageRate(span.tempC, activationJMol, atC), 0)
