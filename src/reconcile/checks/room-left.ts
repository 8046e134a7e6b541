import { expandedSteps, printU } from '../../measure/expanded-steps.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import { exact, expanded, plus, scale, times, type Uncertain } from '../../measure/uncertain.ts'
import { GAL_PER_CU_FT } from '../../measure/units.ts'
import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { type Part, SYSTEM } from '../../records/part.ts'
import { inForce } from '../../rules/in-force.ts'
import type { RoomLeft } from '../../rules/values/room-left.ts'
import { firm, open, sourceOf } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { type Fact, known, lacking } from '../fact.ts'
import { asStated, reading } from '../facts/found-length.ts'
import { bedroomsFor, designedByFlow, flowFor, flowOnRecord } from '../facts/household.ts'
import { type InUse, inUse } from '../occasion.ts'
import type { Exhibit } from '../outcome.ts'
import { exactly, measured } from '../quantity.ts'
import { showLength } from '../show.ts'

type Question = { readonly kind: RoomLeft['kinds'][number]; readonly pits: readonly InUse[] }
type Room = {
  readonly gal: Uncertain
  /** Of the only pit: how far the liquid stands below its inlet. */
  readonly below: Uncertain | null
  /** Pits that nobody read: they may have the room that the others lack. */
  readonly unread: readonly Part[]
  readonly steps: readonly Step[]
}

/**
 * Liquid may stand below the inlet of a pit and leave no room for the next half day. Room = π/4 · d² · depth below the inlet,
 * cubic feet, over all pits of a kind that share the flow; what it is held against is a share of a day's design flow. Full
 * pits are the level's own question.
 */
export const roomLeft = check({
  id: 'room-left',
  raises: ['level-high'],
  subjects: questions,
  about: ({ pits }) => (pits.length === 1 ? pits[0]!.part : SYSTEM),
  facet: ({ kind }) => kind,
  facts: { room: ({ pits }, given) => roomOf(pits, given), flow: (_, given) => flowToday(given) },
  rules: { rule: { name: 'pit.room-left', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ room, flow }, { rule }) {
    const { daysOfFlow, inches } = rule.value
    const needs = flow * daysOfFlow
    const U = expanded(room.gal)
    const near =
      inches !== null && room.below !== null && room.below.value * 12 + expanded(room.below) * 12 < inches
    const short = near || room.gal.value + U < needs
    const enough = !near && room.gal.value - U >= needs
    if (!enough && room.unread.length > 0) {
      const [first, ...more] = room.unread.map((part) => ({
        gap: 'not-measured' as const,
        things: ['level' as const],
        part,
      }))
      return {
        verdict: 'cannot-tell',
        raises: null,
        reason: { is: 'unknown', gaps: [first!, ...more] },
        certainty: open('reading-missing'),
      }
    }
    return {
      verdict: short ? 'falls-short' : enough ? 'suffices' : 'too-close-to-call',
      raises: short ? 'level-high' : null,
      reason: {
        is: 'room-left',
        room: measured(room.gal, 'gal'),
        needs: exactly(needs, 'gal'),
        days: daysOfFlow,
        below:
          near && room.below
            ? { is: measured(scale(room.below, 12), 'in'), least: exactly(inches, 'in') }
            : null,
        source: sourceOf(rule),
        comes: short ? 'short' : enough ? 'enough' : 'too-close',
      },
      certainty: short || enough ? firm('beyond-uncertainty') : open('within-uncertainty'),
      steps: [...room.steps, ...held(room.gal, flow, daysOfFlow), ...nearness(near, room.below, inches)],
    }
  },
})

const n = (value: number): string => printSignificant(value, 6)
const short4 = (value: number): string => printSignificant(value, 4)

/** What is needed, and how the room stands to it within its uncertainty. */
function held(gal: Uncertain, flow: number, days: number): readonly Step[] {
  const [room, U, needs] = [short4(gal.value), printU(gal), flow * days]
  const says = 'Room against what a share of a day brings'
  const verdict =
    gal.value + expanded(gal) < needs
      ? {
          formula: 'room + U < needed',
          numbers: `${room} + ${U} < ${n(needs)} gal`,
          result: 'too little room',
        }
      : gal.value - expanded(gal) >= needs
        ? { formula: 'room − U ≥ needed', numbers: `${room} − ${U} ≥ ${n(needs)} gal`, result: 'room enough' }
        : {
            formula: 'room − U < needed ≤ room + U',
            numbers: `${room} − ${U} < ${n(needs)} ≤ ${room} + ${U} gal`,
            result: 'too close to call',
          }
  return [
    {
      says: 'Flow to make room for',
      formula: 'days · flow',
      numbers: `${n(days)} × ${n(flow)}`,
      result: `${n(needs)} gal`,
    },
    ...expandedSteps(gal, 'gal'),
    { says, ...verdict },
  ]
}

const nearness = (near: boolean, below: Uncertain | null, inches: number | null): readonly Step[] =>
  near && below && inches !== null
    ? [
        ...expandedSteps(scale(below, 12), 'in'),
        {
          says: 'Liquid to the inlet',
          formula: 'depth + U < least',
          numbers: `${short4(below.value * 12)} + ${printU(scale(below, 12))} < ${n(inches)} in`,
          result: 'too near the inlet',
        },
      ]
    : []

const levelOf = (found: FoundComponent | null) =>
  found?.outcome === 'found' ? (found.levelAboveInlet ?? null) : null

function questions(given: Case): readonly Question[] {
  const rule = inForce(given.book, given.county, 'pit.room-left', given.asBuilt.on)
  if (rule.state !== 'in-force') return []
  return rule.value.kinds.flatMap((kind) => {
    const pits = inUse(given).filter(
      ({ part, found }) => (found?.kind ?? part.kind) === kind && found?.outcome !== 'not-found',
    )
    return pits.some(({ found }) => (levelOf(found)?.ft ?? 0) < 0) ? [{ kind, pits }] : []
  })
}

function roomOf(pits: readonly InUse[], given: Case): Fact<Room> {
  const exhibits: Exhibit[] = []
  const unread: Part[] = []
  const steps: Step[] = []
  let gal = exact(0)
  let below: Uncertain | null = null
  for (const { part, built, found } of pits) {
    const level = levelOf(found)
    if (found === null || level === null) {
      unread.push(part)
      continue
    }
    const taking = { part, of: found.label, findings: given.findings?.id ?? '', alone: () => false }
    const { length: height, exhibits: shown } = reading(level, 'level', taking)
    const recorded = built ? statedValue(built.measures.diameter) : null
    if (found.diameter === null && recorded === null)
      return lacking({ gap: 'no-dimensions', part, where: 'inspection' })
    const across = found.diameter
      ? reading(found.diameter, 'diameter', taking)
      : {
          length: asStated(recorded!.ft, recorded!.halfStepFt, `record: diameter of ${part.key}`),
          exhibits: [],
        }
    exhibits.push(...shown, ...across.exhibits)
    if (!found.diameter)
      exhibits.push({
        thing: 'diameter',
        part,
        word: 'derived',
        asStated: recorded!.asWritten,
        used: showLength(recorded!),
        from: { kind: 'computed' },
      })
    const depth = height.value < 0 ? scale(height, -1) : exact(0)
    const count = found.count ?? (built ? statedValue(built.measures.count) : null) ?? 1
    const cuFt = scale(times(times(across.length, across.length), depth), (Math.PI / 4) * count)
    gal = plus(gal, scale(cuFt, GAL_PER_CU_FT))
    const alike = count === 1 ? '' : ` × ${count}`
    steps.push({
      says: `Room below the inlet of ${part.label}`,
      formula: 'π ÷ 4 × d² × depth below inlet × 7.48052 gal/ft³',
      numbers: `π ÷ 4 × ${n(across.length.value)}² × ${n(depth.value)} × ${n(GAL_PER_CU_FT)}${alike}`,
      result: `${short4(cuFt.value * GAL_PER_CU_FT)} gal`,
    })
    below = pits.length === 1 ? depth : null
  }
  if (steps.length > 1)
    steps.push({
      says: 'Room below the inlets of all of them',
      formula: 'Σ room',
      numbers: steps.map(({ result }) => result.replace(' gal', '')).join(' + '),
      result: `${short4(gal.value)} gal`,
    })
  return known({ gal, below, unread, steps }, ...exhibits)
}

/** A day's design flow for the house as it is: by the bedrooms counted, else designed; of what is no dwelling, as stated. */
function flowToday(given: Case): Fact<number> {
  if (designedByFlow(given)) return flowOnRecord(given)
  const bedrooms = bedroomsFor('today', given)
  const rule = inForce(given.book, given.county, 'design.flow-per-bedroom', given.asBuilt.on)
  const flow = flowFor(
    'today',
    given,
    bedrooms.state === 'known' ? bedrooms.value : null,
    rule.state === 'in-force' ? rule : null,
  )
  if (flow === null)
    return bedrooms.state === 'known'
      ? lacking({ gap: 'not-on-record', thing: 'designFlowGpd', part: SYSTEM })
      : bedrooms
  return known(flow, ...(bedrooms.state === 'known' ? bedrooms.exhibits : []))
}
