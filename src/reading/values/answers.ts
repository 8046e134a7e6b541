import { parseLength } from '../../measure/parse/length.ts'
import type { Ask, LabelUnit, SubjectKind } from '../asks.ts'
import type { ParcelNumberFormat } from '../parcel-number.ts'
import { bareUnitFor } from './bare-units.ts'
import { cornerWords } from './corner.ts'
import { findCounts, findNumbers } from './count.ts'
import { findDates } from './date.ts'
import type { Found } from './found.ts'
import { findAddresses, findParcelNumbers, findPermitNumbers } from './identifiers.ts'
import { findLengths } from './length.ts'
import { findSense, findSoil } from './vocabulary.ts'
import { findVolumes } from './volume.ts'

export type ReadingContext = {
  readonly format: ParcelNumberFormat
  /** The words come from a picture, so letters may be misread. */
  readonly misread: boolean
}

/** What is asked for, of which component, in which unit if the label names one. */
export type Question = {
  readonly ask: Ask
  readonly kind: SubjectKind | null
  readonly unit: LabelUnit | null
}

/** Values in a text that answer a question, in order of place. */
export function answers(
  text: string,
  { ask, kind, unit }: Question,
  { format, misread }: ReadingContext,
): Found[] {
  switch (ask) {
    case 'number':
      return findPermitNumbers(text)
    case 'parcelNumber':
      return findParcelNumbers(text, format)
    case 'address':
      return firstOf(findAddresses(spelled(text, misread)), freeText(spelled(text, misread), 4, 80, /\d/))
    case 'kind':
      return findSense(text, 'work', misread)
    case 'issuedOn':
    case 'approvedOn':
      return findDates(text)
    case 'bedrooms':
      return findCounts(text, 1, 20)
    case 'designFlowGpd':
      return findNumbers(text, 30, 50_000)
    case 'percRateMpi':
      return findNumbers(text, 0.2, 480)
    case 'soilTexture':
      return firstOf(
        findSoil(spelled(text, misread)),
        freeText(spelled(text, misread), 3, 40, /^\D+$/).filter(({ value }) => !HALF_A_SOIL.test(value)),
      )
    case 'cornerA':
    case 'cornerB':
      return freeText(
        text
          .replace(/\s+A\s*(?:to|-|–)\s*B\b.*$/i, '')
          .replace(/^(\s*)(?:is|the|at|located)\b/i, (lead) => ' '.repeat(lead.length)),
        4,
        80,
        CORNER_PLACE,
      )
        .filter(({ value }) => !BROKEN_OFF.test(value))
        .map((found) => (misread ? asCorner(found) : found))
    case 'remarks':
      return freeText(text, 2, 400, /[a-z]{2}/i)
    case 'capacity':
      return findVolumes(text, unit === null || unit === 'gal' ? 'gal' : 'refuse', unit === 'gal')
    case 'compartments':
      return findCounts(text, 1, 9)
    case 'count':
      return findCounts(text, 1, 99)
    case 'material':
      return findSense(text, 'material', misread)
    case 'shape':
      return findSense(text, 'shape', misread)
    case 'area':
      return findNumbers(text, 10, 20_000)
    case 'rate':
      return findNumbers(text, 0.05, 5)
    case 'dimensions':
    case 'ties':
      return []
    default:
      return findLengths(text, bareUnitFor(ask, kind, unit)).filter(({ value }) =>
        isPlausible(ask, kind, value),
      )
  }
}

/** `01d Ki1n Rd`, `clay 1oam`: figures among the letters of a word are letters; `21st` and `43A` are what they are. */
const spelled = (text: string, misread: boolean): string =>
  misread
    ? text.replace(/[A-Za-z0-9]{2,}/g, (word) =>
        /^(?:\d+|[1-9]\d*(?:st|nd|rd|th|[A-Z]))$/i.test(word) || !/[a-z]/.test(word)
          ? word
          : word.replace(/^0/, 'O').replaceAll('0', 'o').replaceAll('1', 'l'),
      )
    : text

/** A corner as the trade tells them; one with words that tell none, or cut off, is too little to be sure of. */
function asCorner(found: Found<string>): Found<string> {
  const { text, isWhole } = cornerWords(found.value)
  return { ...found, value: text, fit: isWhole ? found.fit : found.fit * 0.55 }
}

/** Words that say what kind of a texture, and no texture: the rest was not read. */
const HALF_A_SOIL = /^(?:very|coarse|medium|fine|gravelly|stony|sandy|silty|loamy|heavy|light)$/i
/** What a corner of a house is told by (common practice); a heading that only says "corners" names none. */
const CORNER_PLACE =
  /porch|chimney|garage|steps|door|front|rear|back|left|right|\b(?:n|s)\.?\s?[ew]\b|north|south|east|west/i
/** Text that goes on where it was cut, or runs over into a measure. */
const BROKEN_OFF = /\b(?:of|the|to|at|and|with|from|in)$|\d\s?['"’”]/i

const firstOf = (found: Found[], otherwise: Found[]): Found[] => (found.length > 0 ? found : otherwise)

/** A whole text as a value, without the marks around it. */
function freeText(text: string, least: number, most: number, shape: RegExp): Found<string>[] {
  const lead = /^[\s:=.,;()-]*/.exec(text)![0].length
  const value = text.slice(lead).replace(/[\s.,;:(=-]+$/, '')
  if (value.length < least || value.length > most || !shape.test(value)) return []
  return [{ start: lead, end: lead + value.length, value: value.replace(/\s+/g, ' '), fit: 0.9, doubts: [] }]
}

/** Lengths in feet under which nothing of its kind lies: what reads smaller is a piece of something else. */
const LEAST_FT: Partial<Record<Ask, number>> = {
  tieA: 1,
  tieB: 1,
  baseline: 4,
  length: 1.5,
  liquidDepth: 1,
  insideHeight: 1,
}

function isPlausible(ask: Ask, kind: SubjectKind | null, value: string): boolean {
  const least = ask === 'width' && kind === 'tank' ? 1.5 : (LEAST_FT[ask] ?? 0)
  const length = parseLength(value)
  return length.ok && length.value.ft >= least
}
