/** Letters of a currency after ISO 4217, `USD`: a sum of money as a figure has them for its unit. */
export const isCurrency = (unit: string): boolean => /^[A-Z]{3}$/.test(unit)

/** A price of one, `USD/ft²`. */
export const isUnitPrice = (unit: string): boolean => /^[A-Z]{3}\//.test(unit)

/** To the cent, half a cent up. */
export const toCent = (amount: number): number => Math.round(amount * 100 + 1e-6) / 100
