import { ok, type Result } from '../../base/result.ts'
import { GAL_PER_CU_FT, L_PER_GAL, L_PER_IMPERIAL_GAL } from '../units.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { parseQuantity, type UnitTable } from './quantity.ts'

/** A volume as someone wrote it, in US gal; `halfStepGal` is half of the last place written, zeros included. */
export type StatedVolume = {
  readonly gal: number
  readonly halfStepGal: number
  readonly asWritten: string
  readonly approximate?: true
}

const VOLUME: UnitTable = {
  what: 'volume',
  base: 'gal',
  of: ['tank', 'tanks'],
  like: '1,000 gal, 3,785 L or 134 cu ft',
  accepted: 'gal, L, cu ft, cu in, cu yd or m3',
  most: 10_000_000,
  beside: ['septic', 'tank', 'capacity', 'concrete', 'precast', 'nominal', 'size', 'liquid', 'total'],
  units: [
    [1, 'gal gals gallon gallons gl gls g usgal usgals usgallon usgallons'],
    [1000, 'mgal mgals mgallon mgallons kgal kgals thousandgal thousandgals thousandgallons'],
    [L_PER_IMPERIAL_GAL / L_PER_GAL, 'impgal impgals imperialgal imperialgallon imperialgallons'],
    [1 / L_PER_GAL, 'l liter liters litre litres ltr ltrs'],
    [GAL_PER_CU_FT, 'ft3 cuft cubicft cubicfeet cubicfoot cf cft'],
    [GAL_PER_CU_FT / 1728, 'in3 cuin cubicin cubicinch cubicinches'],
    [GAL_PER_CU_FT * 27, 'yd3 cuyd cuyds cubicyd cubicyard cubicyards cy'],
    [1000 / L_PER_GAL, 'm3 cum cubicm cubicmetre cubicmetres cubicmeter cubicmeters'],
  ],
  refused: [
    ['mg', 'may be thousands or millions of gallons', ['# M gal', '#,000,000 gal']],
    ['gpd gpm gph galperday galperminute galperhour', 'is a flow and not a volume', []],
    ['ft in m sqft ft2', 'is a length or an area and not a volume', []],
  ],
}

/** `1.000 gal`: a point between thousands, or a comma that was read as a point; nobody states thousandths of a gallon. */
const POINT_FOR_COMMA = /^\D*(\d{1,3})\.(\d00)(?!\d)/

/**
 * A volume in any of the ways people write one: `1,000 gal`, `1000 gallons`, `1 M gal` (M for a thousand, the old
 * way on drawings), `3,785 L`, `134 cu ft`. A number with no unit is refused unless `bare` says it is gallons.
 */
export function parseVolume(
  text: string,
  { bare }: { readonly bare: 'gal' | 'refuse' } = { bare: 'refuse' },
): Result<StatedVolume, ParseIssue> {
  const read = parseQuantity(text, VOLUME, bare !== 'refuse')
  if (!read.ok) return read
  const point = POINT_FOR_COMMA.exec(text)
  if (point)
    return refuse(`${quoted(text)}: the point may stand between thousands or before decimals`, [
      text.replace(point[0], point[0].replace('.', ',')),
      text.replace(point[0], point[0].replace(/\.?0+$/, '')),
    ])
  const { value, halfStep, approximate } = read.value
  return ok({ gal: value, halfStepGal: halfStep, asWritten: text, ...(approximate ? { approximate } : {}) })
}
