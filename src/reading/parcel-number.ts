import { err, ok, type Result } from '../base/result.ts'

/** One way of writing parcel numbers: the lengths of the groups between separators, `07-0412-0031` is [2, 4, 4]. */
export type ParcelSpelling = {
  readonly groups: readonly number[]
  /** Which groups, counted from 0, may hold letters: these are as long as they are written, up to their length. */
  readonly letters?: readonly number[]
  readonly separator: string
  readonly example: string
}

/** A county's way of writing parcel numbers, and others that are in use there beside it. */
export type ParcelNumberFormat = ParcelSpelling & { readonly others?: readonly ParcelSpelling[] }

export const spellingsOf = ({ others = [], ...own }: ParcelNumberFormat): readonly ParcelSpelling[] => [
  own,
  ...others,
]

/** The format that an example of each spelling shows, the county's main one first; null where one shows none. */
export function parcelFormatFrom(examples: readonly string[]): ParcelNumberFormat | null {
  const [own, ...others] = examples.map((example): ParcelSpelling | null => {
    const separator = /[^A-Za-z0-9]/.exec(example)?.[0] ?? '-'
    const parts = example.split(separator)
    if (parts.some((part) => !/^[A-Za-z0-9]{1,12}$/.test(part)) || !/\d/.test(example)) return null
    const letters = parts.flatMap((part, at) => (/[A-Za-z]/.test(part) ? [at] : []))
    const groups = parts.map(({ length }) => length)
    return { groups, ...(letters.length > 0 ? { letters } : {}), separator, example }
  })
  const rest = others.filter((it) => it !== null)
  if (!own || rest.length < others.length) return null
  return rest.length > 0 ? { ...own, others: rest } : own
}

/**
 * A parcel number in any spelling to the county's own: separators of any kind or none, leading zeros of a group left
 * out where separators show the groups, trailing groups of zeros for a part of a parcel dropped. Where several formats are
 * in use, the one in which it is written to the letter counts first, then the first that it can be.
 */
export function canonicalParcelNumber(written: string, format: ParcelNumberFormat): Result<string, string> {
  const spellings = spellingsOf(format)
  const read = spellings.map((spelling) => canonicalIn(written, spelling))
  const values = read.flatMap((it) => (it.ok ? [it.value] : []))
  const value = values.find((it) => it === written.trim()) ?? values[0]
  if (value !== undefined) return ok(value)
  const [why] = read.flatMap((it) => (it.ok ? [] : [it.error]))
  const like = spellings.map(({ example }) => example).join(' or ')
  return err(`"${written.slice(0, 60)}" is not a parcel number of this county: ${why}; write it like ${like}`)
}

function canonicalIn(
  written: string,
  { groups, letters = [], separator }: ParcelSpelling,
): Result<string, string> {
  const text = written
    .normalize('NFKC')
    .replace(/^\s*(?:parcel|pin|apn|pid)?\s*(?:no\.?|number|#)?\s*:?\s*/i, '')
    .trim()
    .toUpperCase()
  if (text === '' || text.length > 60) return err('it is empty or too long')
  if (letters.length === 0 && /[^\d\s./_–—-]/.test(text))
    return err('it holds something other than figures and separators')
  if (/[^A-Z\d\s./_–—-]/.test(text))
    return err('it holds something other than letters, figures and separators')
  if (letters.length > 0 && !/[A-Z]/.test(text)) return err('it holds no letter')
  const parts = text.split(/[\s./_–—-]+/).filter((part) => part !== '')
  const size = groups.length
  const total = groups.reduce((sum, width) => sum + width, 0)
  if (parts.length === 1 && size > 1) {
    const figures = parts[0]!
    const extra = figures.slice(total)
    if (figures.length < total) return err(`it has ${figures.length} figures of ${total}`)
    if (/[^0]/.test(extra)) return err(`it has ${figures.length} figures, not ${total}`)
    return joined(cut(figures, groups))
  }
  if (parts.length < size) return err(`it has ${parts.length} groups of ${size}`)
  if (parts.slice(size).some((part) => /[^0]/.test(part)))
    return err(`it has ${parts.length} groups, not ${size}`)
  const padded = groups.map((width, at) =>
    letters.includes(at) ? parts[at]! : parts[at]!.padStart(width, '0'),
  )
  const long = padded.find((part, at) => part.length > groups[at]!)
  if (long !== undefined) return err(`the group ${long} is too long`)
  return joined(padded)

  function joined(all: readonly string[]): Result<string, string> {
    const strange = all.find((part, at) => !letters.includes(at) && /\D/.test(part))
    return strange === undefined ? ok(all.join(separator)) : err(`the group ${strange} holds letters`)
  }
}

function cut(figures: string, groups: readonly number[]): string[] {
  let at = 0
  return groups.map((width) => {
    at += width
    return figures.slice(at - width, at)
  })
}
