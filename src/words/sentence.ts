/** With a capital at its head and a full stop at its end, if it has none. */
export const sentence = (text: string): string => {
  const begun = capital(text)
  return /[.!?]$/.test(begun) ? begun : `${begun}.`
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** `a`, `a and b`, `a, b and c`. */
export const listed = (items: readonly string[], and = 'and'): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} ${and} ${items.at(-1)}`

/** `1 permit`, `3 permits`, `no permits`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  count === 0 ? `no ${many}` : `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`
