import type { z } from 'zod'
import type { findingsEntry } from '../../src/reading/entry/findings.ts'
import type { permitEntry } from '../../src/reading/entry/permit.ts'
import { type Dice, dice } from '../bench/county/dice.ts'
import { normal } from '../geometry/position/normal.ts'

type Permit = z.input<typeof permitEntry>
type Findings = z.input<typeof findingsEntry>
type Part = NonNullable<Findings['components']>[number]

/** What is wrong with a system that somebody has to act on, whether or not anybody sees it. */
export const FAILURES = [
  'outlet-blocked',
  'field-full',
  'surfacing',
  'backup',
  'straight-pipe',
  'leaking-tank',
  'baffle-gone',
  'pump-dead',
  'alarm-dead',
  'caved-in',
  'cover-loose',
  'cover-gone',
  'top-rotten',
  'wires-bare',
  'floats-stuck',
  'filter-flooded',
  'chlorinator-empty',
  'pipe-to-creek',
  'laundry-pit-full',
  'old-tank-open',
  'fails-the-test',
] as const
export type Failure = (typeof FAILURES)[number]

/** One system: its paper, what is true of it, and what an inspection of that truth comes back with. */
export type Drawn = {
  readonly permit: Permit
  readonly findings: Findings
  readonly failure: Failure | null
  /** The inspection looked at the place where it shows, and wrote down what it saw there. */
  readonly seen: boolean
}

/** Reading a level with a rule, and a length with a tape: standard errors in inches (common practice). */
const LEVEL_ERROR = 0.3
const TAPE_ERROR = 0.4
const inches = (value: number): string => `${Math.max(0, value).toFixed(2)} in`
const level = (value: number) => (value >= 0 ? { above: inches(value) } : { below: inches(-value) })

/**
 * A system from a seed: the truth first, then what a person with a tape sees of it. Not everything is opened, walked or
 * asked; what is read is read with error; houses stand empty, and tanks were pumped lately. Sizes are as on paper: this
 * county asks whether a system works, not whether it is the one on the card.
 */
export function drawSystem(seed: number): Drawn {
  const throws = dice(seed)
  const error = normal(seed ^ 0x5eed)
  const pumped = throws.chance(0.25)
  const dosed = throws.chance(0.3)
  const field = throws.pick(['trench', 'seepage-pit'] as const)
  const treated = throws.chance(0.2)
  const laundry = throws.chance(0.1)
  const possible = FAILURES.filter((it) => {
    if (['pump-dead', 'alarm-dead', 'wires-bare', 'floats-stuck'].includes(it)) return dosed
    if (['filter-flooded', 'chlorinator-empty'].includes(it)) return treated
    return it === 'laundry-pit-full' ? laundry : true
  })
  const failure = throws.chance(0.4) ? throws.pick(possible) : null
  const opened = throws.chance(0.85)
  const fieldRead = throws.chance(0.6)
  const walked = throws.chance(0.9)
  const asked = throws.chance(0.8)
  const tested = throws.chance(0.85)
  const boxOpened = throws.chance(0.7)
  const vacant = throws.chance(0.15)
  const loaded = boxOpened && throws.chance(0.3)

  const days = pumped ? throws.between(0, 40) : throws.between(200, 1500)
  const people = throws.between(1, 5)
  const tank = trueLevel(failure, { vacant, days, people, pumped, throws })
  const full = failure === 'field-full'
  const system: Partial<Findings> = {
    occupancy: vacant ? 'vacant' : 'occupied',
    people: vacant ? 0 : people,
    ...(vacant ? { daysVacant: Math.max(days, 30) } : {}),
    // What is no failure, and is often there beside one.
    ...(asked ? { disposer: throws.chance(0.2), clearWater: throws.chance(0.05) } : {}),
    ...(walked ? { vehiclesOver: throws.chance(0.1), rootsIn: throws.chance(0.2) } : {}),
    rain: throws.pick(['dry', 'some-rain', 'heavy-rain'] as const),
    groundWaterHigh: throws.chance(0.1),
    ...(loaded ? { testVolume: '150 gal', testMinutes: 30 } : {}),
    bedroomsCounted: 3,
    lastPumpedOn: dayBefore(days),
    ...(walked
      ? { ground: failure === 'surfacing' ? 'surfacing' : throws.chance(0.1) ? 'lush' : 'dry' }
      : { notWalkedBecause: 'no-time' as const }),
    ...(asked ? { backup: failure === 'backup' } : {}),
    ...(walked
      ? { discharge: failure === 'straight-pipe' ? ('ditch-or-drain' as const) : ('none' as const) }
      : {}),
  }
  const length = 98 + TAPE_ERROR * error()
  const parts: Part[] = [
    {
      key: 'p/tank',
      label: 'tank',
      kind: 'tank',
      outcome: 'found',
      material: 'concrete',
      ...(opened
        ? {
            opened: 'cover-off' as const,
            length: inches(length),
            width: inches(50 + TAPE_ERROR * error()),
            liquidDepth: { length: inches(48 + TAPE_ERROR * error()), method: 'liquid-level-rule' as const },
            levelAboveOutlet: level(tank + LEVEL_ERROR * error()),
            condition:
              failure === 'caved-in'
                ? ('collapsed' as const)
                : failure === 'leaking-tank'
                  ? ('leaking' as const)
                  : ('sound' as const),
          }
        : { opened: 'not-opened' as const, notOpenedBecause: 'paved-over' as const }),
      lidSecured: failure !== 'cover-loose' && failure !== 'cover-gone',
      coverMissing: failure === 'cover-gone',
      ...(walked ? { topGivesWay: failure === 'top-rotten' } : {}),
    },
    ...(opened
      ? [
          {
            label: 'outlet baffle',
            kind: 'outlet-baffle' as const,
            outcome: failure === 'baffle-gone' ? ('not-found' as const) : ('found' as const),
            searchedBy: ['seen-through-opening' as const],
          },
        ]
      : []),
    {
      key: 'p/box',
      label: 'box',
      kind: 'distribution-box',
      outcome: 'found',
      ...(boxOpened
        ? {
            opened: 'cover-off' as const,
            levelAboveOutlet: level((full ? 4 : 0) + LEVEL_ERROR * error()),
            ...(loaded
              ? {
                  levelAfterTest: level(
                    (full ? 5 : failure === 'fails-the-test' ? 3 + 2 * throws.next() : 0.2) +
                      LEVEL_ERROR * error(),
                  ),
                }
              : {}),
          }
        : { opened: 'not-opened' as const, notOpenedBecause: 'buried' as const }),
    },
    {
      key: 'p/field',
      label: 'field',
      kind: field,
      outcome: 'found',
      ...(fieldRead
        ? { levelAboveInlet: level((full ? 1 + 3 * throws.next() : -30) + LEVEL_ERROR * error()) }
        : {}),
    },
    ...(dosed
      ? [
          {
            key: 'p/pump',
            label: 'pump chamber',
            kind: 'pump-chamber' as const,
            outcome: 'found' as const,
            opened: 'cover-off' as const,
            pumpWorks: tested
              ? failure === 'pump-dead'
                ? ('does-not-work' as const)
                : ('works' as const)
              : ('not-tested' as const),
            alarmWorks: tested
              ? failure === 'alarm-dead'
                ? ('does-not-work' as const)
                : ('works' as const)
              : ('not-tested' as const),
            ...(tested
              ? {
                  floatsWork: failure === 'floats-stuck' ? ('does-not-work' as const) : ('works' as const),
                  wiringCovered: failure !== 'wires-bare',
                }
              : {}),
            lidSecured: true,
          },
        ]
      : []),
  ]
  if (treated)
    parts.push(
      {
        key: 'p/filter',
        label: 'filter',
        kind: 'media-filter',
        outcome: 'found',
        opened: 'cover-off',
        levelAboveInlet: level(
          (failure === 'filter-flooded' ? 2 + 3 * throws.next() : -12) + LEVEL_ERROR * error(),
        ),
      },
      {
        key: 'p/chlorinator',
        label: 'chlorinator',
        kind: 'disinfection-unit',
        outcome: 'found',
        opened: 'cover-off',
        disinfects: tested ? (failure === 'chlorinator-empty' ? 'does-not-work' : 'works') : 'not-tested',
      },
    )
  if (laundry)
    parts.push({
      key: 'p/laundry pit',
      label: 'laundry pit',
      kind: 'laundry-system',
      outcome: 'found',
      ...(boxOpened
        ? {
            opened: 'cover-off' as const,
            levelAboveInlet: level(
              (failure === 'laundry-pit-full' ? 2 + throws.next() : -20) + LEVEL_ERROR * error(),
            ),
          }
        : { opened: 'not-opened' as const, notOpenedBecause: 'buried' as const }),
    })
  if (failure === 'pipe-to-creek' && walked)
    parts.push({ label: 'pipe to the creek', kind: 'straight-pipe', outcome: 'found' })
  if (failure === 'old-tank-open' && walked)
    parts.push({ label: 'old tank', kind: 'tank', outcome: 'found', coverMissing: true })
  const shows: { readonly [F in Failure]: boolean } = {
    'outlet-blocked': opened,
    'field-full': opened || boxOpened || fieldRead,
    surfacing: walked,
    backup: asked,
    'straight-pipe': walked,
    'leaking-tank': opened,
    'baffle-gone': opened,
    'pump-dead': tested,
    'alarm-dead': tested,
    'caved-in': opened,
    'cover-loose': true,
    'cover-gone': true,
    'top-rotten': walked,
    'wires-bare': tested,
    'floats-stuck': tested,
    'filter-flooded': true,
    'chlorinator-empty': tested,
    'pipe-to-creek': walked,
    'laundry-pit-full': boxOpened,
    'old-tank-open': walked,
    'fails-the-test': loaded,
  }
  return {
    permit: {
      number: 'p',
      kind: 'new',
      issuedOn: '1988-03-01',
      approvedOn: '1988-05-01',
      bedrooms: 3,
      components: [
        { tag: 'tank', kind: 'tank', capacity: '1000 gal', material: 'concrete' },
        { tag: 'box', kind: 'distribution-box' },
        { tag: 'field', kind: field },
        ...(dosed ? [{ tag: 'pump', kind: 'pump-chamber' as const }] : []),
        ...(treated
          ? [
              { tag: 'filter', kind: 'media-filter' as const },
              { tag: 'chlorinator', kind: 'disinfection-unit' as const },
            ]
          : []),
        ...(laundry ? [{ tag: 'laundry pit', kind: 'laundry-system' as const }] : []),
      ],
    },
    findings: { inspectedOn: '2026-05-19', ...system, components: parts },
    failure,
    seen: failure !== null && shows[failure],
  }
}

type Life = {
  readonly vacant: boolean
  readonly days: number
  readonly people: number
  readonly pumped: boolean
  readonly throws: Dice
}

/** Inches of the tank's liquid against its outlet, as it is. A household sends 40 to 80 gal a person and day. */
function trueLevel(failure: Failure | null, { vacant, days, people, pumped, throws }: Life): number {
  if (failure === 'outlet-blocked') return 3 + 5 * throws.next()
  if (failure === 'field-full') return 3 + 3 * throws.next()
  if (failure === 'leaking-tank') return -6 - 20 * throws.next()
  if (vacant && !pumped) return -throws.next()
  const inflow = vacant ? 0 : days * people * (40 + 40 * throws.next())
  const gal = pumped ? Math.min(1018, inflow) : 1018
  return -48 * (1 - gal / 1018)
}

const dayBefore = (days: number): string => new Date(Date.UTC(2026, 4, 19 - days)).toISOString().slice(0, 10)
