/** Heat the sky sends down. */
import { zeroCelsiusK } from './humidity'

/** Stefan–Boltzmann, W/m²K⁴ (CODATA 2018, exact to the digits given). */
export const stefanBoltzmann = 5.670374419e-8

/**
 * Emissivity of the sky: (0.787 + 0.764 ln(Tdp/273))(1 + 0.0224 N − 0.0035 N² + 0.00028 N³), N in tenths. Sources:
 * G. Clark and C. Allen, Proc. 2nd National Passive Solar Conference, 1978; G. Walton, NBSSIR 83-2655, 1983, as given in
 * the EnergyPlus Engineering Reference. The dew point enters as °C + 273.15 over 273, as printed.
 *
 * @param cloud share of the sky covered, 0…1
 */
export function skyEmissivity(dewPointC: number, cloud: number): number {
  const tenths = cloud * 10
  return (
    (0.787 + 0.764 * Math.log((dewPointC + zeroCelsiusK) / 273)) *
    (1 + 0.0224 * tenths - 0.0035 * tenths ** 2 + 0.00028 * tenths ** 3)
  )
}

/** W/m² of a black body. */
export const blackBody = (tempC: number): number => stefanBoltzmann * (tempC + zeroCelsiusK) ** 4

/** W/m² from the sky on a level plane. */
export const skyRadiation = (airC: number, dewPointC: number, cloud: number): number =>
  skyEmissivity(dewPointC, cloud) * blackBody(airC)
