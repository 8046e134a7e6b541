import { parseLength } from '../../measure/parse/length.ts'
import type { Doubt } from '../proposal.ts'
import { type Found, matches } from './found.ts'

const FRACTION = String.raw`\d+\s*/\s*\d+`
const AMOUNT = String.raw`(?:\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?)(?:[\s-]+${FRACTION}|[¼½¾⅛⅜⅝⅞])?|${FRACTION}|[¼½¾]`
const FOOT_MARK =
  `(?:['’‘′´` +
  '`' +
  String.raw`]|\s?(?:feet|foot|ft|lf|l\.f|lin\.?\s*ft|lineal\s*f(?:ee)?t|linear\s*f(?:ee)?t)\b\.?)`
const INCH_MARK = String.raw`(?:["”“″]|['’‘′´]{2}|\s?(?:inches|inch|ins?)\b\.?)`
const METER = String.raw`\s?(?:m|metres?|meters?|cm|mm)\b\.?`

const FEET_INCHES = new RegExp(
  String.raw`(?<![\d.,/])(\d{1,4})\s*${FOOT_MARK}\s*[-–—]?\s*(\d{1,2}(?:[\s-]+${FRACTION}|\.\d+|[¼½¾⅛⅜⅝⅞])?|${FRACTION})\s*(?:${INCH_MARK}|(?=$|[\s,;.xX)]))`,
  'i',
)
/** On a picture the foot mark is lost or read as a point or star: `7-6"`, `7.-6"`; the dash and inch mark show it. */
const WORN_FEET_INCHES =
  /(?<![\d.,/'’-])(\d{1,3})\s?[.'’‘*°^,"”]{0,2}\s?[-–—]\s?(\d{1,2})\s?(?:["”“″]|['’‘*]{2}|['’‘](?!\d))/
/** `4-6` with no marks, where a length is asked for. */
const WITHOUT_MARKS = /(?<![\d.,/'’A-Za-z-])(\d{1,3})\s?[-–—]\s?(\d{1,2})(?![\dA-Za-z/'"’”%-]|[.,]\d)/
/** Feet with something after the mark that is no inches were feet and inches once: better none than half of them. */
const FEET = new RegExp(
  String.raw`(?<![\d.,/'’])(${AMOUNT})\s*-?${FOOT_MARK}(?!(?<=['’‘′´])\s*[-–—]?\s*[\dOoIl|!\]])`,
  'i',
)
const INCHES = new RegExp(String.raw`(?<![\d.,/'’])(${AMOUNT})\s*-?${INCH_MARK}`, 'i')
const METERS = new RegExp(String.raw`(?<![\d.,/'’])(${AMOUNT})${METER}`, 'i')
const BARE = new RegExp(
  String.raw`(?<![\d.,/'’A-Za-z-])(${AMOUNT})(?![\dA-Za-z/'"’”%]|[.,]\d|-\d|\s?(?:gal|g\b|gpd|min|mpi|sq|%))`,
  'i',
)

/** What a bare number means where it stands; null where it is not to be taken. */
export type BareUnit = (value: number) => { readonly unit: 'ft' | 'in'; readonly sure: boolean } | null

/** Lengths in a text, in order; a number without a unit only where `bare` says what it would be. */
export function findLengths(text: string, bare: BareUnit = () => null): Found<string>[] {
  const found: Found<string>[] = []
  const add = (candidates: readonly Found<string>[]): void => {
    for (const candidate of candidates) {
      const taken = found.some(({ start, end }) => candidate.start < end && candidate.end > start)
      if (!taken) found.push(candidate)
    }
  }
  add(matches(text, FEET_INCHES, ([, feet, inches]) => checked(`${feet}'-${plainFraction(inches!)}"`, 1)))
  add(
    matches(text, WORN_FEET_INCHES, ([, feet, inches]) =>
      Number(inches) < 12 ? checked(`${feet}'-${inches}"`, 0.9) : undefined,
    ),
  )
  add(matches(text, METERS, ([written]) => checked(written.trim(), 0.95)))
  add(matches(text, INCHES, ([, amount]) => checked(`${plainFraction(amount!)} in`, 1)))
  add(matches(text, FEET, ([, amount]) => checked(`${plainFraction(amount!)} ft`, 1)))
  add(
    matches(text, WITHOUT_MARKS, ([written, feet, inches]) =>
      bare(Number(feet)) && Number(inches) < 12
        ? checked(`${feet}'-${inches}"`, 0.7, [
            {
              kind: 'unit-assumed',
              says: `no marks are written in ${written}; feet and inches are usual here`,
              readings: [`${feet}'-${inches}"`],
            },
          ])
        : undefined,
    ),
  )
  add(
    matches(text, BARE, ([, amount]) => {
      const taken = bare(numeric(amount!))
      if (!taken) return undefined
      const written = `${plainFraction(amount!)} ${taken.unit}`
      return checked(written, taken.sure ? 0.97 : 0.8, taken.sure ? [] : [unitDoubt(amount!, taken.unit)])
    }),
  )
  return found.sort((a, b) => a.start - b.start)
}

const checked = (value: string, fit: number, doubts: readonly Doubt[] = []) =>
  parseLength(value).ok ? { value, fit, doubts } : undefined

const unitDoubt = (amount: string, unit: 'ft' | 'in'): Doubt => ({
  kind: 'unit-assumed',
  says: `no unit is written beside ${amount}; ${unit === 'ft' ? 'feet' : 'inches'} are usual here`,
  readings: [`${plainFraction(amount)} ft`, `${plainFraction(amount)} in`],
})

const VULGAR: Record<string, string> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

const plainFraction = (amount: string): string =>
  amount
    .replace(/([¼½¾⅛⅜⅝⅞])/g, (mark) => ` ${VULGAR[mark]}`)
    .replace(/\s*\/\s*/g, '/')
    .replace(/(\d)[\s-]+(\d+\/)/g, '$1 $2')
    .trim()

/** The value of `6`, `6.5`, `1,000`, `6 1/2` or `1/2`. */
export function numeric(amount: string): number {
  const [, whole = '', top, bottom] =
    /^([\d.,]*)\s*(?:(\d+)\/(\d+))?$/.exec(
      plainFraction(amount)
        .replace(/^(\d+)\/(\d+)$/, ' $1/$2')
        .trim(),
    ) ?? []
  const part = top && bottom ? Number(top) / Number(bottom) : 0
  return Number(whole.replace(/,/g, '') || 0) + part
}
