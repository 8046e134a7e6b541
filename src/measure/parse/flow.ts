import { ok, type Result } from '../../base/result.ts'
import { GAL_PER_CU_FT, L_PER_GAL } from '../units.ts'
import type { ParseIssue } from './issue.ts'
import { parseQuantity, type UnitTable } from './quantity.ts'

/** A daily flow as someone wrote it, in US gal per day; `halfStepGpd` is half of the last place written. */
export type StatedFlow = {
  readonly gpd: number
  readonly halfStepGpd: number
  readonly asWritten: string
  readonly approximate?: true
}

const GALLONS = ['gal', 'gals', 'gallon', 'gallons']
const PER_DAY = ['perday', 'perd', 'aday', 'eachday', 'daily']
const perDay = (units: readonly string[]): string =>
  units.flatMap((unit) => PER_DAY.map((day) => `${unit}${day}`)).join(' ')

const FLOW: UnitTable = {
  what: 'daily flow',
  base: 'gpd',
  of: ['flow', 'flows'],
  like: '450 gpd or 1,700 L/day',
  accepted: 'gpd, gal/day, L/day, m3/day or cu ft/day',
  most: 10_000_000,
  units: [
    [1, `gpd ${perDay(GALLONS)}`],
    [1000, `mgalperday mgalsperday mgallonsperday kgalperday kgpd`],
    [1 / L_PER_GAL, `lpd ${perDay(['l', 'liter', 'liters', 'litre', 'litres'])}`],
    [1000 / L_PER_GAL, `${perDay(['m3', 'cum', 'cubicmeters', 'cubicmetres'])}`],
    [GAL_PER_CU_FT, `cfd ${perDay(['ft3', 'cuft', 'cubicfeet'])}`],
  ],
  refused: [
    ['mgd', 'may be thousands or millions of gallons a day', ['# M gal/day', '#,000,000 gpd']],
    [
      'gpm gph galpermin galperminute gallonsperminute galperhour gallonsperhour cfs',
      'is the rate of a pump or a fixture, not the flow of a whole day',
      [],
    ],
    [
      'gpcd gpdperbedroom gpdperbr gpdperbdrm gpdperperson gpdpercapita',
      'is the flow for one person or bedroom, not the whole daily flow',
      [],
    ],
    ['gpdpersqft gpdperft2 gpdpersf', 'is an application rate and not a flow', []],
    ['gal gallons l m3', 'is a volume and not what flows in a day', ['# gpd']],
  ],
}

/** A daily flow in any of the ways people write one: `450 gpd`, `450 gal/day`, `450 gallons per day`, `1,700 L/day`. */
export function parseFlow(
  text: string,
  { bare }: { readonly bare: 'gpd' | 'refuse' } = { bare: 'refuse' },
): Result<StatedFlow, ParseIssue> {
  const read = parseQuantity(text, FLOW, bare !== 'refuse')
  if (!read.ok) return read
  const { value, halfStep, approximate } = read.value
  return ok({ gpd: value, halfStepGpd: halfStep, asWritten: text, ...(approximate ? { approximate } : {}) })
}
