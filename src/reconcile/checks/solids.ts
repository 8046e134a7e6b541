import { solidsFaults } from '../../geometry/solids/derive-solids.ts'
import { type ConditionAnswer, evaluateSolidsRule } from '../../geometry/solids/evaluate-solids-rule.ts'
import type { SolidsReadings } from '../../geometry/solids/solids-readings.ts'
import { expanded } from '../../measure/uncertain.ts'
import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { inForce } from '../../rules/in-force.ts'
import type { SolidsRule } from '../../rules/values/solids-rules.ts'
import { aboutSeen, derived, firm, open, required, sourceOf } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { beside, type Fact, known, lacking } from '../fact.ts'
import { type Reading, reading } from '../facts/found-length.ts'
import type { Exhibit } from '../outcome.ts'
import { exactly, measured } from '../quantity.ts'
import type { SolidsAnswer } from '../reason.ts'
import type { Thing } from '../thing.ts'

type Question = { readonly found: FoundComponent; readonly rule: SolidsRule }

const TAKEN = {
  liquidDepth: 'liquidDepth',
  sludgeThickness: 'sludgeDepth',
  scumThickness: 'scumThickness',
  scumBottomBelowLiquid: 'scumBottomBelow',
  outletBottomBelowLiquid: 'outletDeviceBelow',
  outletTopAboveLiquid: 'outletDeviceAbove',
} as const satisfies { readonly [K in keyof SolidsReadings]: keyof FoundComponent & Thing }

/** Thresholds of different authorities contradict each other, so each rule in reach is asked under its own name. */
export const solids = check({
  id: 'solids',
  raises: ['solids-high'],
  subjects: questions,
  about: ({ found }, given) => aboutSeen(found, given),
  facet: ({ rule }) => rule.id,
  facts: { readings: ({ found }, given) => readingsOf(found, given) },
  rules: {},
  decide({ readings }, _, { found, rule }, { pairings }) {
    const built = pairings.find((pairing) => pairing.found === found)?.built
    const nominal = built ? (statedValue(built.measures.capacity)?.gal ?? null) : null
    const { value, steps } = evaluateSolidsRule(rule, readings, nominal)
    const citations = rule.citations
    const reason = {
      is: 'solids',
      rule: rule.name,
      source: sourceOf(rule),
      conditions: value.conditions.map(answerOf),
      comes: value.verdict,
      passing: value.conditions.some(isPassing),
    } as const
    const exhibits = value.conditions.flatMap((answer) => exhibitsOf(answer, rule))
    switch (value.verdict) {
      case 'due':
        return {
          verdict: 'falls-short',
          raises: 'solids-high',
          reason,
          certainty: firm('beyond-uncertainty'),
          exhibits,
          steps,
          citations,
        }
      case 'not-due':
        return {
          verdict: 'suffices',
          raises: null,
          reason,
          certainty: firm('beyond-uncertainty'),
          exhibits,
          steps,
          citations,
        }
      case 'too-close-to-call':
        return {
          verdict: 'too-close-to-call',
          raises: null,
          reason,
          certainty: open('within-uncertainty'),
          exhibits,
          steps,
          citations,
        }
      case 'cannot-tell':
        return {
          verdict: 'cannot-tell',
          raises: null,
          reason,
          certainty: open('reading-missing'),
          exhibits,
          steps,
          citations,
        }
    }
  },
})

/**
 * Half of the liquid depth full of scum and sludge leaves the flow too little time to settle, and sludge at the bottom of
 * the outlet device goes out with it (common practice): the absorption area gets what does not come out of it again.
 */
const PASSING_SHARE = 50
function isPassing({ condition, found }: ConditionAnswer): boolean {
  if (found === null) return false
  return condition.when === 'share-above'
    ? found.value - expanded(found) > PASSING_SHARE
    : found.value + expanded(found) <= 0
}

const SETTLING: readonly string[] = ['tank', 'grease-interceptor']

function questions({ findings, former, book, county, asBuilt }: Case): readonly Question[] {
  const tanks = (findings?.record.components ?? []).filter(
    ({ kind, outcome, sludgeDepth, scumThickness, scumBottomBelow }) =>
      SETTLING.includes(kind) &&
      outcome === 'found' &&
      (sludgeDepth ?? scumThickness ?? scumBottomBelow) !== null,
  )
  const rules = inForce(book, county, 'solids.rules', asBuilt.on)
  if (rules.state !== 'in-force') return []
  const inUse = tanks.filter((found) => !former.some((old) => old.found === found))
  // Distances to the outlet device are rules for septic tanks; a share of the depth is asked of an interceptor too.
  const fits = ({ kind }: FoundComponent, { anyOf }: SolidsRule): boolean =>
    kind === 'tank' || anyOf.every(({ when }) => when === 'share-above')
  return inUse.flatMap((found) =>
    rules.value.filter((rule) => fits(found, rule)).map((rule) => ({ found, rule })),
  )
}

function readingsOf(found: FoundComponent, given: Case): Fact<SolidsReadings> {
  const part = aboutSeen(found, given)
  const { findings } = given
  if ((found.levelAboveOutlet?.ft ?? 0) < -0.25) {
    return beside({ aside: 'level-below-outlet', part })
  }
  const taken = Object.entries(TAKEN).flatMap(([name, field]): [string, Reading][] => {
    const length = found[field] as FoundLength | null
    if (length === null) return []
    return [
      [
        name,
        reading(length, field, { part, of: found.label, findings: findings?.id ?? '', alone: () => false }),
      ],
    ]
  })
  const readings = Object.fromEntries(taken.map(([name, { length }]) => [name, length])) as SolidsReadings
  const faults = solidsFaults(readings)
  if (faults.length > 0) return lacking({ gap: 'impossible', part, issues: faults })
  return known(readings, ...taken.flatMap(([, { exhibits }]) => exhibits))
}

const answerOf = ({ condition, found, limit, verdict }: ConditionAnswer): SolidsAnswer => {
  const unit = condition.when === 'share-above' ? '%' : 'in'
  return {
    of: whatOf(condition),
    found: found && measured(found, unit),
    limit: limit === null ? null : exactly(limit, unit),
    comes: verdict,
  }
}

const whatOf = (condition: ConditionAnswer['condition']): SolidsAnswer['of'] => {
  switch (condition.when) {
    case 'share-above':
      return 'share'
    case 'distance-at-most':
      return condition.distance
    case 'sludge-distance-at-most-by-tank':
      return 'sludge-top-to-outlet-bottom'
  }
}

function exhibitsOf(answer: ConditionAnswer, rule: SolidsRule): readonly Exhibit[] {
  const { of, found, limit } = answerOf(answer)
  if (found === null || limit === null) return []
  const thing = of === 'share' ? 'solids-share' : of
  return [
    derived(thing, found),
    required(
      thing,
      { limit: of === 'share' ? 'at-most' : 'more-than', than: limit },
      {
        value: rule,
        citations: rule.citations,
      },
    ),
  ]
}
