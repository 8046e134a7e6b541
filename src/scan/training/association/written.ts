import type { UnitOf } from '../../../reading/association/fields.ts'
import type { Chance } from './chance.ts'

/** How one page writes its values: most keep to one habit. */
export type Hand = {
  readonly date: number
  readonly feet: number
  readonly inches: number
  readonly gallons: number
  readonly upper: boolean
}

export const makeHand = (roll: Chance): Hand => ({
  date: roll.whole(0, 9),
  feet: roll.whole(0, 8),
  inches: roll.whole(0, 5),
  gallons: roll.whole(0, 8),
  upper: roll.chance(0.35),
})

/** A text, and the unit that it does not write. */
export type Written = { readonly t: string; readonly unit: UnitOf }
const own = (t: string): Written => ({ t, unit: 'own' })

const MONTHS = 'January|February|March|April|May|June|July|August|September|October|November|December'.split(
  '|',
)

export function writtenDate(roll: Chance, { date, upper }: Hand, year: number): string {
  const month = roll.whole(1, 12)
  const day = roll.whole(1, 28)
  const name = MONTHS[month - 1]!
  const short = name.slice(0, 3)
  const two = (value: number): string => String(value).padStart(2, '0')
  const text = [
    () => `${month}/${day}/${year}`,
    () => `${month}/${day}/${two(year % 100)}`,
    () => `${month}-${day}-${two(year % 100)}`,
    () => `${two(month)}-${two(day)}-${year}`,
    () => `${name} ${day}, ${year}`,
    () => `${short}. ${day}, ${year}`,
    () => `${day} ${short} ${year}`,
    () => `${year}-${two(month)}-${two(day)}`,
    () => `${short} ${day} ${year}`,
    () => `${month}.${day}.${two(year % 100)}`,
  ][roll.chance(0.88) ? date : roll.whole(0, 9)]!()
  return upper ? text.toUpperCase() : text
}

const FRACTIONS = ['', '', '', '', '.5', ' 1/2']

export function writtenFeet(roll: Chance, hand: Hand, feet: number, mayBeBare: boolean): Written {
  const style = roll.chance(0.85) ? hand.feet : roll.whole(0, 8)
  const whole = Math.floor(feet)
  const inches = Math.round((feet - whole) * 12)
  if (inches > 0 && inches < 12) {
    return own(
      [
        `${whole}'-${inches}"`,
        `${whole}'${inches}"`,
        `${whole}' ${inches}"`,
        `${whole} ft ${inches} in`,
        `${whole} ft. ${inches} in.`,
        inches === 6 ? `${whole}.5'` : `${whole}'-${inches}"`,
        inches === 6 ? `${whole}.5 ft` : `${whole}' - ${inches}"`,
        inches === 6 ? `${whole} 1/2'` : `${whole}'-${inches}"`,
        `${whole}-${inches}`,
      ][style === 8 && !mayBeBare ? 0 : style]!,
    )
  }
  if (mayBeBare && roll.chance(0.45)) return { t: `${whole}${roll.pick(FRACTIONS.slice(0, 5))}`, unit: 'ft' }
  return own(
    [
      `${whole}'`,
      `${whole} ft`,
      `${whole} ft.`,
      `${whole}'-0"`,
      `${whole} feet`,
      `${whole}.0'`,
      `${whole}'`,
      `${whole} FT`,
      `${whole} LF`,
    ][style]!,
  )
}

export function writtenInches(roll: Chance, hand: Hand, inches: number, mayBeBare: boolean): Written {
  if (mayBeBare && roll.chance(0.45)) return { t: String(inches), unit: 'in' }
  if (inches % 12 === 0 && roll.chance(0.2)) return writtenFeet(roll, hand, inches / 12, mayBeBare)
  const style = roll.chance(0.85) ? hand.inches : roll.whole(0, 5)
  return own(
    [`${inches}"`, `${inches} in`, `${inches} in.`, `${inches} inches`, `${inches}"`, `${inches} IN`][style]!,
  )
}

export function writtenGallons(roll: Chance, hand: Hand, gallons: number, mayBeBare: boolean): Written {
  const figures = roll.chance(0.6) && gallons >= 1000 ? gallons.toLocaleString('en-US') : String(gallons)
  if (mayBeBare && roll.chance(0.4)) return { t: figures, unit: 'gal' }
  const style = roll.chance(0.85) ? hand.gallons : roll.whole(0, 8)
  return own(
    [
      `${figures} gal`,
      `${figures} gal.`,
      `${figures} gallons`,
      `${figures} GAL`,
      `${figures} Gal.`,
      `${figures} gals.`,
      `${figures}gal`,
      `${figures}-gal.`,
      `${figures} GAL.`,
    ][style]!,
  )
}

const NUMERALS = 'one two three four five six seven eight nine ten'.split(' ')

export function writtenCount(roll: Chance, count: number): string {
  if (roll.chance(0.8) || count > 10) return String(count)
  const word = NUMERALS[count - 1]!
  return roll.pick([
    word,
    word.toUpperCase(),
    `${word} (${count})`,
    `(${count})`,
    word[0]!.toUpperCase() + word.slice(1),
  ])
}

export function writtenParcel(roll: Chance): string {
  const figures = (count: number): string =>
    Array.from({ length: count }, (_, at) => roll.whole(at === 0 ? 0 : 0, 9)).join('')
  const separator = roll.pick(['-', '-', '-', '.', ' ', '/', ''])
  return roll.pick([
    () => [figures(2), figures(4), figures(4)].join(roll.chance(0.8) ? '-' : separator),
    () => [figures(3), figures(3), figures(2)].join(separator),
    () => [figures(2), figures(2), figures(3), figures(3)].join(separator),
    () => [figures(3), figures(2), figures(3) + roll.of('A|B|C|')].join('-'),
    () => `${roll.of('R|M|A|T|P')}${roll.pick(['', '-', ' '])}${figures(roll.whole(4, 8))}`,
    () => `${figures(roll.whole(6, 10))}`,
    () => [figures(2), figures(3), figures(4), figures(4)].join('-'),
  ])()
}

export function writtenPermitNumber(roll: Chance, year: number): string {
  const two = String(year % 100).padStart(2, '0')
  const n = roll.whole(1, 9999)
  return roll.pick([
    () => `${year}-${n}`,
    () => `${two}-${n}`,
    () => `${n}`,
    () =>
      `${roll.of('SW|S|P|SD|H|EH|OS|A|R')}${roll.pick(['', '-', ' '])}${two}${String(n).padStart(4, '0')}`,
    () => `${roll.of('S|SP|H|SEP|W')}-${n}`,
    () => `${two}${String(n).padStart(4, '0')}`,
    () => `${n}-${two}`,
    () => `No. ${n}`,
    () => `${n}-${roll.of('A|B|R|S')}`,
  ])()
}
