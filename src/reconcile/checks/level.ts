import { FIELDS_OF_SOIL, PITS, WITH_OUTLET } from '../../catalog/kinds.ts'
import { expandedSteps, printU } from '../../measure/expanded-steps.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { expanded, scale } from '../../measure/uncertain.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen, firm, open, seen, sourceOf } from '../about.ts'
import type { Case } from '../case.ts'
import { check, type InForceNow } from '../check.ts'
import { known, lacking } from '../fact.ts'
import { reading } from '../facts/found-length.ts'
import { refill } from '../facts/refill.ts'
import type { Certainty } from '../outcome.ts'
import { exactly } from '../quantity.ts'
import type { ReasonOf } from '../reason.ts'

type LevelComes = ReasonOf<'level'>['comes']

const BY_INLET: readonly string[] = [...PITS, ...FIELDS_OF_SOIL, 'media-filter', 'observation-port']

/**
 * Where the liquid is, against what it is read from. Over an outlet, in a tank or a box, what lies beyond takes too little.
 * At or over the inlet of a pit, a field or a port there is no room left. Under a tank's outlet it leaks, unless what
 * flowed in since it was pumped could not have filled it. It changes no capacity.
 */
export const level = check({
  id: 'level',
  raises: ['level-high', 'level-low'],
  subjects: ({ findings, former }) =>
    (findings?.record.components ?? [])
      .filter((found) => found.outcome === 'found' && (asked(found) || required(found)))
      .filter((found) => !former.some((old) => old.found === found)),
  about: aboutSeen,
  facts: {
    level: (found, given) => {
      const part = aboutSeen(found, given)
      const taken = taking(found)
      if (!taken) return lacking({ gap: 'not-measured', things: ['level'], part })
      const findings = given.findings?.id ?? ''
      const { length } = reading(taken, 'level', { part, of: found.label, findings, alone: () => true })
      return known(
        length,
        seen(found, part, findings, 'level', exactly(taken.ft, 'ft'), taken.method, taken.asWritten),
      )
    },
  },
  rules: {
    tolerance: { name: 'level.tolerance-in', on: (_, { asBuilt }) => asBuilt.on },
    perPerson: { name: 'household.flow-per-person', on: (_, { asBuilt }) => asBuilt.on, optional: true },
  },
  decide({ level: height }, { tolerance, perPerson }, found, given) {
    const inches = height.value * 12
    const U = expanded(height) * 12
    const limit = tolerance.value.amount
    const against = BY_INLET.includes(found.kind) ? 'inlet' : 'outlet'
    const off = Math.abs(inches) - U > limit
    const farthest = Math.abs(inches) + U
    const read = scale(height, 12)
    const [h, u] = [printSignificant(Math.abs(inches), 6), printU(read)]
    const around = surroundings(given)
    const steps = [
      ...expandedSteps(read, 'in'),
      {
        says: `Level against the ${against} invert`,
        ...(off
          ? {
              formula: '|h| − U > tolerance',
              numbers: `${h} − ${u} > ${limit} in`,
              result: 'off the invert',
            }
          : farthest <= limit
            ? {
                formula: '|h| + U ≤ tolerance',
                numbers: `${h} + ${u} ≤ ${limit} in`,
                result: 'at the invert',
              }
            : {
                formula: '|h| − U ≤ tolerance < |h| + U',
                numbers: `${h} − ${u} ≤ ${limit} < ${h} + ${u} in`,
                result: 'near the invert',
              }),
      },
    ]
    const ft = { value: height.value, unit: 'ft', U: expanded(height) } as const
    const says = <V extends 'agrees' | 'differs' | 'too-close-to-call'>(
      verdict: V,
      comes: LevelComes,
      certainty: Certainty,
    ) =>
      ({
        verdict,
        raises: verdict === 'differs' ? 'level-high' : null,
        reason: {
          is: 'level',
          height: ft,
          tolerance: exactly(limit, 'in'),
          against,
          ...(around.length > 0 && comes !== 'at' ? { around } : {}),
          comes,
        },
        certainty,
        steps,
        unasked: ['perPerson'],
      }) as const
    const high = inches > 0 && off
    // At the inlet is as bad as above it: nothing more goes in.
    if (against === 'inlet' && !high)
      return inches < -limit ? says('agrees', 'room', firm('seen')) : says('differs', 'high', firm('seen'))
    if (high) return says('differs', 'high', firm('beyond-tolerance'))
    if (off && found.kind === 'distribution-box') return says('agrees', 'room', firm('seen'))
    if (off) return lowLevel(found, given, ft, perPerson, steps)
    return Math.abs(inches) <= limit
      ? says('agrees', 'at', firm('within-tolerance'))
      : says('too-close-to-call', 'near', open('within-uncertainty'))
  },
})

/** What a low level means hangs on what could have filled it. */
function lowLevel(
  found: FoundComponent,
  given: Case,
  height: { readonly value: number; readonly unit: 'ft'; readonly U: number },
  perPerson: InForceNow<'household.flow-per-person'> | null,
  steps: readonly { says: string; formula: string; numbers: string; result: string }[],
) {
  const { missing, inflow, vacant, comes, working } = refill(
    found,
    given,
    -height.value,
    perPerson?.value.amount ?? null,
  )
  const source = inflow === null || perPerson === null ? null : sourceOf(perPerson)
  const reason = { is: 'low-level', height, missing, inflow, vacant, comes, source } as const
  const leaks = comes !== 'refilling'
  return {
    verdict: leaks ? 'differs' : 'agrees',
    raises: leaks ? 'level-low' : null,
    reason,
    certainty: comes === 'leaks' ? firm('beyond-tolerance') : leaks ? open('undecided') : firm('by-dates'),
    steps: [...steps, ...working],
    unasked: source === null ? ['perPerson'] : [],
  } as const
}

const taking = (found: FoundComponent) =>
  BY_INLET.includes(found.kind) ? found.levelAboveInlet : found.levelAboveOutlet
const asked = (found: FoundComponent): boolean => taking(found) !== null
/** A tank's level is asked for even where nobody read it. */
const required = ({ kind }: FoundComponent): boolean => (WITH_OUTLET as readonly string[]).includes(kind)

/** High ground water and recent rain lift a level and do not drain a field: whoever reads the level reads them with it. */
function surroundings({ findings }: Case): NonNullable<ReasonOf<'level'>['around']> {
  const { rain, groundWaterHigh } = findings?.record ?? {}
  return [
    ...(rain === 'heavy-rain' || rain === 'thaw' ? [rain] : []),
    ...(groundWaterHigh ? (['ground-water'] as const) : []),
  ]
}
