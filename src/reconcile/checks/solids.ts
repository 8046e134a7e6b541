import { solidsFaults } from '../../geometry/solids/derive-solids.ts'
import { type ConditionAnswer, evaluateSolidsRule } from '../../geometry/solids/evaluate-solids-rule.ts'
import type { SolidsReadings } from '../../geometry/solids/solids-readings.ts'
import { printWithU } from '../../measure/print/gallons.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { the } from '../../records/naming.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { unread } from '../../rules/citation.ts'
import { inForce } from '../../rules/in-force.ts'
import type { SolidsRule } from '../../rules/values/solids-rules.ts'
import { aboutSeen, derived, firm, open, required } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { beside, type Fact, known, lacking } from '../fact.ts'
import { type Reading, reading } from '../facts/found-length.ts'
import type { Exhibit } from '../outcome.ts'

type Question = { readonly found: FoundComponent; readonly rule: SolidsRule }

const TAKEN = {
  liquidDepth: ['liquidDepth', 'liquid depth'],
  sludgeThickness: ['sludgeDepth', 'sludge depth'],
  scumThickness: ['scumThickness', 'scum thickness'],
  scumBottomBelowLiquid: ['scumBottomBelow', 'bottom of the scum below the liquid'],
  outletBottomBelowLiquid: ['outletDeviceBelow', 'outlet device below the invert'],
  outletTopAboveLiquid: ['outletDeviceAbove', 'outlet device above the invert'],
} as const satisfies { readonly [K in keyof SolidsReadings]: readonly [keyof FoundComponent, string] }

/** Thresholds of different authorities contradict each other, so each rule in reach is asked under its own name. */
export const solids = check({
  id: 'solids',
  question: 'Do scum and sludge call for pumping?',
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
    const because = `${the(found.label)}, by the rule “${rule.name}”${unread({ value: rule, citations })}: ${value.conditions.map(said).join('; ')}`
    const exhibits = value.conditions.flatMap((answer) => exhibitsOf(answer, rule))
    switch (value.verdict) {
      case 'due':
        return {
          verdict: 'falls-short',
          raises: 'solids-high',
          because,
          certainty: firm('beyond the threshold by more than the expanded uncertainty'),
          exhibits,
          steps,
          citations,
        }
      case 'not-due':
        return {
          verdict: 'suffices',
          raises: null,
          because,
          certainty: firm('clear of the threshold'),
          exhibits,
          steps,
          citations,
        }
      case 'too-close-to-call':
        return {
          verdict: 'too-close-to-call',
          raises: null,
          because,
          certainty: open('the threshold lies within the expanded uncertainty'),
          exhibits,
          steps,
          citations,
        }
      case 'cannot-tell':
        return {
          verdict: 'cannot-tell',
          raises: null,
          because,
          certainty: open('a reading is lacking'),
          exhibits,
          steps,
          citations,
        }
    }
  },
})

function questions({ findings, former, book, county, asBuilt }: Case): readonly Question[] {
  const tanks = (findings?.record.components ?? []).filter(
    ({ kind, outcome, sludgeDepth, scumThickness, scumBottomBelow }) =>
      kind === 'tank' && outcome === 'found' && (sludgeDepth ?? scumThickness ?? scumBottomBelow) !== null,
  )
  const rules = inForce(book, county, 'solids.rules', asBuilt.on)
  if (rules.state !== 'in-force') return []
  const inUse = tanks.filter((found) => !former.some((old) => old.found === found))
  return inUse.flatMap((found) => rules.value.map((rule) => ({ found, rule })))
}

function readingsOf(found: FoundComponent, { findings }: Case): Fact<SolidsReadings> {
  if ((found.levelAboveOutlet?.ft ?? 0) < -0.25) {
    return beside(
      `the liquid in ${the(found.label)} stood below the outlet, so distances to the outlet device say nothing`,
    )
  }
  const taken = Object.entries(TAKEN).flatMap(([name, [field, words]]): [string, Reading][] => {
    const length = found[field] as FoundLength | null
    if (length === null) return []
    return [
      [name, reading(length, words, { of: found.label, findings: findings?.id ?? '', alone: () => false })],
    ]
  })
  const readings = Object.fromEntries(taken.map(([name, { length }]) => [name, length])) as SolidsReadings
  const faults = solidsFaults(readings)
  if (faults.length > 0)
    return lacking(`the readings can't be right: ${faults.map(({ message }) => message).join('; ')}`)
  return known(readings, ...taken.flatMap(([, { exhibits }]) => exhibits))
}

type Condition = ConditionAnswer['condition']
const whatOf = (condition: Condition): string =>
  condition.when === 'share-above'
    ? 'scum and sludge'
    : WORDS[condition.when === 'distance-at-most' ? condition.distance : 'sludge-top-to-outlet-bottom']
const unitOf = ({ when }: Condition): string => (when === 'share-above' ? '% of the liquid depth' : 'in')

const said = ({ condition, found, limit, lacking: gaps, verdict }: ConditionAnswer): string => {
  if (found === null || limit === null) return `${gaps.join(' and ')} not read`
  const unit = unitOf(condition)
  const least = condition.when === 'share-above' ? 'at most' : 'more than'
  return `${whatOf(condition)} ${printWithU(found, unit)}, where it asks for ${least} ${printSignificant(limit, 3)} ${unit} (${verdict.replaceAll('-', ' ')})`
}

function exhibitsOf({ condition, found, limit }: ConditionAnswer, rule: SolidsRule): readonly Exhibit[] {
  if (found === null || limit === null) return []
  const [what, unit] = [whatOf(condition), unitOf(condition)]
  const least = condition.when === 'share-above' ? 'at most' : 'more than'
  const figure = `${least} ${printSignificant(limit, 3)} ${unit}`
  return [
    derived(what, printWithU(found, unit)),
    required(what, figure, { value: rule, citations: rule.citations }),
  ]
}

const WORDS = {
  'sludge-top-to-outlet-bottom': 'sludge to the bottom of the outlet device',
  'scum-bottom-to-outlet-bottom': 'bottom of the scum to the bottom of the outlet device',
  'scum-top-to-outlet-top': 'top of the scum to the top of the outlet device',
} as const
