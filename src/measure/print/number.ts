/**
 * A number with commas between thousands and a fixed count of decimals: `1,000`, `957.5`. Written here because the
 * platform's own formatter follows the machine's language, and the same answer must print the same everywhere.
 */
export function printNumber(value: number, decimals = 0): string {
  const fixed = Math.abs(value).toFixed(decimals)
  const [whole = '', fraction] = fixed.split('.')
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, ',')
  const sign = value < 0 && Number(fixed) !== 0 ? '-' : ''
  return `${sign}${grouped}${fraction === undefined ? '' : `.${fraction}`}`
}

/** To so many significant digits with trailing zeros dropped: the way numbers stand in a step of working. */
export function printSignificant(value: number, digits = 6): string {
  if (value === 0) return '0'
  const place = digits - 1 - Math.floor(Math.log10(Math.abs(value)))
  const text = printNumber(value, Math.min(Math.max(place, 0), 12))
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}
