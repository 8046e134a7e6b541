import type { Point } from '../../geometry/position/point.ts'
import { positionFromTwoTies } from '../../geometry/position/two-ties.ts'
import { measuredLength } from '../../measure/measured-length.ts'
import { METHODS, type Method, type MethodPreset } from '../../measure/methods.ts'
import { printLength } from '../../measure/print/length.ts'
import type { Step } from '../../measure/step.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import type { AsBuiltComponent, Claim } from '../../records/as-built.ts'
import { statedValue } from '../../records/claim.ts'
import type { Reference, Side, Tie } from '../../records/component.ts'
import { sameCorner } from '../../records/corner.ts'
import type { FoundComponent, SubmittedFindings } from '../../records/findings.ts'
import { the } from '../../records/naming.ts'
import type { FoundLength, StatedLength } from '../../records/quantity.ts'
import { inForce } from '../../rules/in-force.ts'
import type { Case } from '../case.ts'
import { beside, claimFact, type Fact, known, lacking } from '../fact.ts'
import type { Exhibit } from '../outcome.ts'

/** Where a thing is: one place, or the two mirror places that two ties give when nobody says which side. */
export type Place = {
  readonly points: readonly [Point] | readonly [Point, Point]
  readonly steps: readonly Step[]
}

/** Baseline of the reference wall: as the inspection taped it, else as the record states it. */
type Baseline = { readonly length: Uncertain; readonly exhibit: Exhibit }
/** The inspection, and the rules where they are at hand: a drawing does without. */
type Placing = Pick<Case, 'findings'> & Partial<Pick<Case, 'book' | 'county'>>
type Presets = { readonly [M in Method]: MethodPreset }

const printTie = ({ a, b, side }: Tie<StatedLength>): string =>
  `A ${printLength(a.ft)}, B ${printLength(b.ft)}${side === null ? ', side not said' : side === 'away' ? ', away from the house' : ', on the house side'}`

/** How a length on record is off: by the rule that held when the part went in, else as record drawings are. */
function onRecord(built: AsBuiltComponent, { book, county }: Placing): Presets {
  const { approvedOn, issuedOn } = built.events[0].permit
  const day = approvedOn ?? issuedOn
  const rule =
    !book || !county || day === null ? null : inForce(book, county, 'position.record-accuracy-ft', day)
  if (rule?.state !== 'in-force') return METHODS
  const reading = { inches: 12 * rule.value.amount }
  return { ...METHODS, 'record-drawing': { ...METHODS['record-drawing'], reading } }
}

/** Where the record's ties put a component, each tie good to the accuracy that its record was held to. */
export function recordedPlace(built: AsBuiltComponent, given: Placing): Fact<Place> {
  const tie = claimFact(built.measures.tie, `ties to ${the(built.label)}`, printTie)
  if (tie.state !== 'known') return tie
  const presets = onRecord(built, given)
  const baseline = baselineOf(built.reference, given.findings, presets)
  if (!baseline)
    return lacking('neither the record nor the inspection gives the distance between the corners A and B')
  const taped = (ft: number, name: string, halfStepFt: number) =>
    measuredLength(ft, 'record-drawing', 'record drawing', `record: tie ${name} of ${built.label}`, {
      halfStepFt,
      presets,
    })
  const place = placed(
    taped(tie.value.a.ft, 'A', tie.value.a.halfStepFt),
    taped(tie.value.b.ft, 'B', tie.value.b.halfStepFt),
    baseline.length,
    tie.value.side,
  )
  if ('says' in place) return lacking(`the ties on record to ${the(built.label)} do not meet: ${place.says}`)
  return known(place, ...tie.exhibits, baseline.exhibit)
}

/** Where the inspection's ties put a component, in the frame of the same two corners. */
export function foundPlace(
  found: FoundComponent,
  findings: SubmittedFindings,
  reference: Claim<Reference<StatedLength>>,
): Fact<Place> {
  const { tie } = found
  if (!tie) return lacking(`the inspection took no ties to ${the(found.label)}`)
  const corners = findings.record.reference
  const recorded = statedValue(reference)
  if (corners && recorded && !(sameCorner(corners.a, recorded.a) && sameCorner(corners.b, recorded.b))) {
    return beside(
      `the inspection measured from ${corners.a} and ${corners.b}, the record from ${recorded.a} and ${recorded.b}`,
    )
  }
  const baseline = baselineOf(reference, findings, METHODS)
  if (!baseline)
    return lacking('neither the record nor the inspection gives the distance between the corners A and B')
  const place = placed(
    taken(tie.a, `tie A of ${found.label}`),
    taken(tie.b, `tie B of ${found.label}`),
    baseline.length,
    tie.side,
  )
  if ('says' in place)
    return lacking(`the inspection's ties to ${the(found.label)} do not meet: ${place.says}`)
  const exhibit: Exhibit = {
    what: `ties to ${found.label}`,
    word: 'found',
    asStated: `A ${tie.a.asWritten}, B ${tie.b.asWritten}${tie.sideWords ? `, ${tie.sideWords}` : ''}`,
    asUsed: printTie(tie),
    from: {
      kind: 'inspection',
      findings: findings.id,
      component: found.label,
      how: METHODS[tie.a.method].says,
    },
  }
  return known(place, exhibit, baseline.exhibit)
}

function baselineOf(
  reference: Claim<Reference<StatedLength>>,
  findings: SubmittedFindings | null,
  presets: Presets,
): Baseline | null {
  const taped = findings?.record.reference?.baseline
  if (findings && taped) {
    return {
      length: taken(taped, 'baseline'),
      exhibit: {
        what: 'baseline between corners A and B',
        word: 'found',
        asStated: taped.asWritten,
        asUsed: printLength(taped.ft),
        from: { kind: 'inspection', findings: findings.id, component: null, how: METHODS[taped.method].says },
      },
    }
  }
  const stated = statedValue(reference)?.baseline
  if (!stated || reference.state !== 'stated') return null
  return {
    length: measuredLength(stated.ft, 'record-drawing', 'record drawing', 'record: baseline', {
      halfStepFt: stated.halfStepFt,
      presets,
    }),
    exhibit: {
      what: 'baseline between corners A and B',
      word: 'stated',
      asStated: stated.asWritten,
      asUsed: printLength(stated.ft),
      from: { kind: 'permit', origin: reference.origin },
    },
  }
}

const taken = ({ ft, method, instrument, halfStepFt }: FoundLength, name: string): Uncertain =>
  measuredLength(ft, method, `instrument: ${instrument}`, `reading: ${name}`, { halfStepFt })

function placed(
  a: Uncertain,
  b: Uncertain,
  baseline: Uncertain,
  side: Side | null,
): Place | { says: string } {
  if (Math.min(a.value, b.value, baseline.value) <= 0) return { says: 'a tie or the baseline is zero' }
  const fix = positionFromTwoTies(a, b, baseline)
  if (!fix.ok) return fix.error
  const { away, toward, geometry } = fix.value.value
  const points: Place['points'] =
    side === 'away' || geometry === 'flat' ? [away] : side === 'toward' ? [toward] : [away, toward]
  return { points, steps: fix.value.steps }
}
