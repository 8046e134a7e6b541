/** A share in percent with the bounds that hold it 95 times of 100 (Wilson 1927). */
export function withInterval(part: number, whole: number): string {
  if (whole === 0) return '–'
  const [z, share] = [1.96, part / whole]
  const middle = (share + z ** 2 / (2 * whole)) / (1 + z ** 2 / whole)
  const half =
    (z / (1 + z ** 2 / whole)) * Math.sqrt((share * (1 - share)) / whole + z ** 2 / (4 * whole ** 2))
  const percent = (value: number): string => (100 * value).toFixed(1)
  return `${percent(share)} (${percent(Math.max(0, middle - half))} to ${percent(Math.min(1, middle + half))})`
}
