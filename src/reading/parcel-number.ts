import { err, ok, type Result } from '../base/result.ts'

/** A county's way of writing parcel numbers: the lengths of the groups of figures, `07-0412-0031` is [2, 4, 4]. */
export type ParcelNumberFormat = {
  readonly groups: readonly number[]
  readonly separator: string
  readonly example: string
}

/**
 * A parcel number in any spelling to the county's own: separators of any kind or none, leading zeros of a group left
 * out where separators show the groups, trailing groups of zeros for a part of a parcel dropped.
 */
export function canonicalParcelNumber(written: string, format: ParcelNumberFormat): Result<string, string> {
  const wrong = (why: string) =>
    err(
      `"${written.slice(0, 60)}" is not a parcel number of this county: ${why}; write it like ${format.example}`,
    )
  const text = written
    .normalize('NFKC')
    .replace(/^\s*(?:parcel|pin|apn|pid)?\s*(?:no\.?|number|#)?\s*:?\s*/i, '')
    .trim()
  if (text === '' || text.length > 60) return wrong('it is empty or too long')
  if (/[^\d\s./_–—-]/.test(text)) return wrong('it holds something other than figures and separators')
  const parts = text.split(/[\s./_–—-]+/).filter((part) => part !== '')
  const size = format.groups.length
  const total = format.groups.reduce((sum, width) => sum + width, 0)
  if (parts.length === 1) {
    const figures = parts[0]!
    const extra = figures.slice(total)
    if (figures.length < total) return wrong(`it has ${figures.length} figures of ${total}`)
    if (/[^0]/.test(extra)) return wrong(`it has ${figures.length} figures, not ${total}`)
    return ok(grouped(figures.slice(0, total), format))
  }
  if (parts.length < size) return wrong(`it has ${parts.length} groups of ${size}`)
  if (parts.slice(size).some((part) => /[^0]/.test(part)))
    return wrong(`it has ${parts.length} groups, not ${size}`)
  const padded = format.groups.map((width, index) => parts[index]!.padStart(width, '0'))
  const long = padded.find((part, index) => part.length > format.groups[index]!)
  if (long !== undefined) return wrong(`the group ${long} is too long`)
  return ok(padded.join(format.separator))
}

const grouped = (figures: string, { groups, separator }: ParcelNumberFormat): string =>
  groups
    .map((width, index) => {
      const from = groups.slice(0, index).reduce((sum, earlier) => sum + earlier, 0)
      return figures.slice(from, from + width)
    })
    .join(separator)
