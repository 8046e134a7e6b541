const known = new WeakMap<readonly string[], readonly string[]>()

/**
 * The strings of a template without its layout. A line break and the indent after it vanish next to a tag or a slot,
 * and are one space between words and between attributes. A space that counts stands on a line with what it parts.
 * Each template is read once.
 */
export function joined(strings: readonly string[]): readonly string[] {
  const before = known.get(strings)
  if (before) return before
  const parts = withoutLayout(strings)
  known.set(strings, parts)
  return parts
}

function withoutLayout(strings: readonly string[]): readonly string[] {
  let inTag = false
  let quote: string | null = null
  return strings.map((part) =>
    part.replace(/\s*\n\s*|<(?=[a-z/!])|["'>]/gi, (sign: string, at: number) => {
      if (sign === '<') inTag = inTag || quote === null
      else if (sign === '>') inTag = inTag && quote !== null
      else if (sign === '"' || sign === "'")
        quote = !inTag ? null : quote === null ? sign : quote === sign ? null : quote
      else return layout(part[at - 1], part.slice(at + sign.length), inTag, quote !== null)
      return sign
    }),
  )
}

function layout(before: string | undefined, rest: string, inTag: boolean, inQuotes: boolean): string {
  if (inTag) return !inQuotes && /^\/?>/.test(rest) ? '' : ' '
  const besideTagOrSlot = before === undefined || before === '>' || rest === '' || rest.startsWith('<')
  return besideTagOrSlot ? '' : ' '
}
