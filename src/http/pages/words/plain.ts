/** `line-replaced` as people read it: `line replaced`. The names in data are the trade's words with hyphens. */
export const plain = (name: string): string => name.replaceAll('-', ' ')

/** The same at the head of a sentence or a line: `Line replaced`. */
export const headed = (name: string): string => capital(plain(name))

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** `1 permit`, `3 permits`, `no permits`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return count === 0 ? `no ${many}` : `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`
}
