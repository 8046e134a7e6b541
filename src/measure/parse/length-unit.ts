import { M_PER_FT } from '../units.ts'
import type { Token } from './tokens.ts'

export type LengthUnit = 'ft' | 'in' | 'yd' | 'm' | 'cm' | 'mm'

export const FT_PER: { readonly [U in LengthUnit]: number } = {
  ft: 1,
  in: 1 / 12,
  yd: 3,
  m: 1 / M_PER_FT,
  cm: 0.01 / M_PER_FT,
  mm: 0.001 / M_PER_FT,
}

const SPELLINGS: { readonly [U in LengthUnit]: string } = {
  ft: "' ft fts feet foot lf linft",
  in: '" in ins inch inches',
  yd: 'yd yds yard yards',
  m: 'm mtr mtrs metre metres meter meters',
  cm: 'cm cms centimetre centimetres centimeter centimeters',
  mm: 'mm mms millimetre millimetres millimeter millimeters',
}

const UNITS: ReadonlyMap<string, LengthUnit> = new Map(
  (Object.keys(SPELLINGS) as LengthUnit[]).flatMap((unit) =>
    SPELLINGS[unit].split(' ').map((word) => [word, unit] as const),
  ),
)

/** The unit of length a token names, if it names one. */
export const lengthUnit = (token: Token | undefined): LengthUnit | undefined =>
  token === undefined || token.kind === 'number' ? undefined : UNITS.get(token.text.toLowerCase())
