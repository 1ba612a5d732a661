/**
 * A number with thousands separators, at most `decimals` decimals (0 to 10), trailing zeros dropped down to
 * `atLeast`: `1,588`, `24.5`. Negative numbers carry a true minus sign; a value that rounds to nothing is `0`.
 */
export const printNumber = (value: number, decimals: number, atLeast = 0): string => {
  const [whole = '', cents = ''] = Math.abs(value).toFixed(decimals).split('.')
  let kept = cents
  while (kept.length > atLeast && kept.endsWith('0')) kept = kept.slice(0, -1)
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  const digits = kept === '' ? grouped : `${grouped}.${kept}`
  return value < 0 && /[1-9]/.test(digits) ? `−${digits}` : digits
}
