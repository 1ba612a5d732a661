/**
 * Water vapor in air. Saturation pressure over water after Magnus with the coefficients of WMO-No. 8, Guide to
 * Instruments and Methods of Observation, annex 4.B (2018): within about 0.3 % over water.
 */

/** Kelvin of 0 °C, exact. */
export const zeroCelsiusK = 273.15

export const saturationHPa = (tempC: number): number => 6.112 * Math.exp((17.62 * tempC) / (243.12 + tempC))

/** Share 0…1 when the dew point is at or under the air; above 1 says the two do not belong together. */
export const humidityFromDewPoint = (airC: number, dewPointC: number): number =>
  saturationHPa(dewPointC) / saturationHPa(airC)

/** Dew point in °C of air at a relative humidity (share, over 0). */
export function dewPointFromHumidity(airC: number, humidity: number): number {
  const logRatio = Math.log(humidity) + (17.62 * airC) / (243.12 + airC)
  return (243.12 * logRatio) / (17.62 - logRatio)
}
