import { canonicalParcelNumber, type ParcelNumberFormat, spellingsOf } from '../parcel-number.ts'
import { type Found, matches } from './found.ts'

const FIGURE_GROUPS = /(?<![\d.$'])\d{1,12}(?:\s?[-–./_ ]\s?\d{1,8})*(?![\d'"])/
/** A permit's number: figures with or without letters and dashes; at least one figure. */
const NUMBER =
  /(?<![\w$'])(?=[A-Za-z0-9./-]*\d)[A-Za-z]{0,6}[-–. ]?\d[A-Za-z0-9]*(?:[-–/.][A-Za-z0-9]+){0,3}(?![\w'"])/

const patterns = new WeakMap<ParcelNumberFormat, RegExp>()
/** Figures and separators; where a county's numbers hold letters, its own groups in their order too. */
function patternOf(format: ParcelNumberFormat): RegExp {
  const known = patterns.get(format)
  if (known) return known
  const lettered = spellingsOf(format).flatMap(({ groups, letters = [] }) =>
    letters.length === 0
      ? []
      : [
          String.raw`(?<![\w.$'])(?=[A-Za-z\s./_–-]*\d)${groups
            .map((width, at) => `${letters.includes(at) ? '[A-Za-z0-9]' : String.raw`\d`}{1,${width}}`)
            .join(String.raw`\s?[-–./_ ]\s?`)}(?![\w'"])`,
        ],
  )
  const pattern = new RegExp([...lettered, FIGURE_GROUPS.source].join('|'))
  patterns.set(format, pattern)
  return pattern
}

/** Parcel numbers of the county in a text. */
export const findParcelNumbers = (text: string, format: ParcelNumberFormat): Found<string>[] =>
  matches(text, patternOf(format), ([written]) => {
    const canonical = canonicalParcelNumber(written, format)
    if (!canonical.ok) return undefined
    const separated = written.replace(/\s/g, '') === canonical.value
    return { value: canonical.value, fit: separated ? 1 : 0.9, doubts: [] }
  })

/** Numbers that a permit can have, in order. `word` is a label's leftover (`No.`) and is not part of it. */
export const findPermitNumbers = (text: string): Found<string>[] =>
  matches(
    text.replace(/^\s*(?:no|number|nr|#)\b\.?\s*[:#]?\s*/i, (label) => ' '.repeat(label.length)),
    NUMBER,
    ([written]) => {
      const value = written.trim()
      if (value.length < 2 || value.length > 24 || /^\d{1,2}$/.test(value) === true) return undefined
      return { value, fit: /^\d{3}-\d{4}$/.test(value) ? 0.7 : 1, doubts: [] }
    },
  )

const STREET =
  'road|rd|street|st|avenue|ave|lane|ln|drive|dr|court|ct|circle|cir|way|place|pl|terrace|ter|trail|trl|pike|highway|hwy|route|rte|blvd|boulevard|loop|run|path|row|hollow|ridge|crossing|parkway|pkwy|square|sq'
const ADDRESS = new RegExp(
  String.raw`(?<![\w-])\d{1,5}\s+(?:[A-Za-z0-9.'-]+\s+){0,4}(?:${STREET})\b\.?(?:\s+(?:n|s|e|w|ne|nw|se|sw)\b)?`,
  'i',
)

/** Addresses with a house number and a street word. */
export const findAddresses = (text: string): Found<string>[] =>
  matches(text, ADDRESS, ([written]) => ({ value: written.trim(), fit: 1, doubts: [] }))
