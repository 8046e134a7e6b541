import type { Ask } from '../asks.ts'
import type { PageWords } from '../page-words.ts'
import { spellingsOf } from '../parcel-number.ts'
import type { Doubt } from '../proposal.ts'
import type { Mentioned, PageReadings, Statement } from '../statement.ts'
import { answers, type ReadingContext } from '../values/answers.ts'
import { correctedFigures } from '../values/corrected.ts'
import type { Found } from '../values/found.ts'
import { partOf, withWholeTies } from './belongs.ts'
import type { LinkedValue } from './links.ts'

/** What is told so as to be taken for nothing else, and never proposed. */
const SET_ASIDE = new Set(['none', 'part', 'owner', 'installer', 'installedOn', 'otherDate', 'otherNumber'])
/** Said of what stands in the line above, in the same column. */
const DITTO = /^(?:["”“″]|''|''|do\.?|ditto|same|" "|-"-)$/i
const NOTHING = /^(?:n\/?a|none|unk\.?|unknown|nil|no|-+|_+|\?+)\.?$/i
/** A value is believed to be what the model says from here on. */
const LEAST_SCORE = 0.35

export type PermitReadings = PageReadings & {
  /** Which of the page's permits it is, from the top. */
  readonly permit: number
  /** How clearly its words are this permit's and not another's of the page. */
  readonly clear: number
}

/** What a page's words say, permit by permit, by the links that were stored with them. */
export function readingsOf(page: PageWords, context: ReadingContext): PermitReadings[] {
  const values = withWholeTies(page.links?.values ?? [])
  const permits = [...new Set(values.map(({ permit }) => permit))].sort((a, b) => a - b)
  return permits.map((permit): PermitReadings => {
    const own = values.filter((value) => value.permit === permit)
    return {
      permit,
      clear: permits.length === 1 ? 1 : Math.min(...own.map(({ permitScore }) => permitScore)),
      statements: own.flatMap((value) => statementOf(value, own, values, page, context)),
      mentions: own.flatMap((value) => mentionOf(value, own, page)),
    }
  })
}

const orderOf = ({ box }: LinkedValue, page: PageWords): number =>
  page.page * 1e6 + Math.round(box.y * 1e3) * 1e3 + Math.round(box.x * 100)

function statementOf(
  value: LinkedValue,
  permit: readonly LinkedValue[],
  all: readonly LinkedValue[],
  page: PageWords,
  context: ReadingContext,
): Statement[] {
  const kind = partOf(value, permit)
  if (SET_ASIDE.has(value.field) || value.score < LEAST_SCORE || kind === 'left-out') return []
  const written = DITTO.test(value.text.trim()) ? meantAgain(value, all) : value.text
  if (written === null || NOTHING.test(written.trim())) return []
  const text = (mayCorrect(value, context) ? correctedFigures(written).text : written).replace(
    /^[_.·…\s]+|[_·…\s]+$/g,
    '',
  )
  const ask = value.field as Ask
  const unit = value.unit === 'own' ? null : value.unit
  const found = wholest(answers(text, { ask, kind, unit }, context))
  if (!found) return []
  return [
    {
      ask,
      kind,
      ordinal: kind === null ? null : page.page * 10_000 + value.part,
      existing: value.existing,
      value: found.value,
      excerpt: {
        words: value.text,
        seen: value.text,
        page: page.page,
        box: value.box,
        confidence: value.confidence,
      },
      fit: found.fit * value.score * (isWhole(found, text) ? 1 : IN_PART),
      how:
        value.ticked && (ask === 'kind' || ask === 'material' || ask === 'shape')
          ? 'tick'
          : value.label
            ? 'label'
            : 'prose',
      why: value.label && { words: value.label.text, box: value.label.box },
      doubts: [...found.doubts, ...unitDoubts(value, found), ...belonging(value, permit, all)],
      order: orderOf(value, page),
    },
  ]
}

/** Letters are read as figures on pictures, but for parcel numbers that may hold letters. */
const mayCorrect = ({ field }: LinkedValue, { misread, format }: ReadingContext): boolean =>
  misread && !(field === 'parcelNumber' && spellingsOf(format).some(({ letters }) => letters !== undefined))

/** Of several readings of a text the one that takes most of it. */
const wholest = (found: readonly Found[]): Found | undefined =>
  [...found].sort((a, b) => b.end - b.start - (a.end - a.start) || a.start - b.start)[0]

/** A value is a piece of what stands there: the rest may be the half of it that was misread. */
const IN_PART = 0.75
const BESIDE_A_VALUE =
  /\b(?:no|number|gal(?:lon)?s?|ft|feet|in|inch(?:es)?|gpd|mpi|min|per|day|sq|and|of|pipe|tile|new|system|soils?|each|ea|lines?|the|at)\b/gi

const isWhole = ({ start, end }: Found, text: string): boolean =>
  `${text.slice(0, start)} ${text.slice(end)}`.replace(BESIDE_A_VALUE, '').replace(/[^A-Za-z0-9]/g, '')
    .length < 3

/** The value above in the same column. */
function meantAgain(value: LinkedValue, all: readonly LinkedValue[]): string | null {
  const above = all.filter(
    (other) =>
      other.field === value.field &&
      other.box.y < value.box.y - 0.3 * value.box.h &&
      other.box.x < value.box.x + value.box.w + 0.04 &&
      other.box.x + other.box.w > value.box.x - 0.04 &&
      !DITTO.test(other.text.trim()),
  )
  return above.sort((a, b) => b.box.y - a.box.y)[0]?.text ?? null
}

const UNIT_SAID = {
  ft: /\b(?:ft|feet|foot|l\.?f)\b/i,
  in: /\b(?:in|ins|inch|inches)\b/i,
  gal: /\bgal/i,
} as const

/** A unit that neither the value nor its label writes is custom, and custom may be another county's. */
function unitDoubts({ unit, label }: LinkedValue, found: Found): Doubt[] {
  if (
    unit === 'own' ||
    (label && UNIT_SAID[unit].test(label.text)) ||
    found.doubts.some(({ kind }) => kind === 'unit-assumed')
  )
    return []
  return [
    {
      kind: 'unit-assumed',
      says: `no unit is written beside it; ${String(found.value)} is what is usual here`,
      readings: [found.value],
    },
  ]
}

const SURE_LABEL = 0.9
const SURE_PART = 0.7
const SURE_PERMIT = 0.9

/** What speaks against that a value is what it is taken for: it shall be evidenced, not only near. */
function belonging(value: LinkedValue, permit: readonly LinkedValue[], all: readonly LinkedValue[]): Doubt[] {
  const doubt = (says: string): Doubt => ({ kind: 'belongs-unclear', says, readings: [] })
  const doubts: Doubt[] = []
  if (all.some((other) => other.permit !== value.permit) && value.permitScore < SURE_PERMIT)
    doubts.push(doubt('several permits stand on this page, and it is not clear which one this is of'))
  if (value.part >= 0 && value.partScore < SURE_PART)
    doubts.push(doubt('several parts of this kind are told of, and it is not clear which one this is of'))
  const isLabeled = value.label !== null && value.label.score >= SURE_LABEL
  const isNamed = permit.some(({ field, part }) => field === 'part' && part === value.part)
  if (value.label === null && sidesTurned(value, permit))
    doubts.push(doubt('two sides without a word which is which: the longer one is taken as the length'))
  if (value.of !== 'permit' && !isLabeled && !isNamed)
    doubts.push(doubt('no label and no name beside it says what it is of'))
  return doubts
}

/** `20' x 30'`: the first side is written as the length by some, and the longer one is it to others. */
const sidesTurned = (value: LinkedValue, permit: readonly LinkedValue[]): boolean => {
  const isSide = value.field === 'length' || value.field === 'width'
  const side = (field: string): LinkedValue | undefined =>
    permit.find((other) => other.field === field && other.part === value.part && other.label === null)
  const [length, width] = [side('length'), side('width')]
  return (
    isSide &&
    !!length &&
    !!width &&
    width.box.y <= length.box.y + length.box.h / 2 &&
    width.box.x < length.box.x
  )
}

function mentionOf(value: LinkedValue, permit: readonly LinkedValue[], page: PageWords): Mentioned[] {
  if (value.field !== 'part' || value.score < 0.8) return []
  const kind = partOf(value, permit)
  if (kind === null || kind === 'left-out') return []
  return [
    {
      kind,
      ordinal: page.page * 10_000 + value.part,
      existing: value.existing,
      excerpt: {
        words: value.text,
        seen: value.text,
        page: page.page,
        box: value.box,
        confidence: value.confidence,
      },
      order: orderOf(value, page),
      as: value.ticked ? 'tick' : 'named',
      likeness: value.score,
    },
  ]
}
