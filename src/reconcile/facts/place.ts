import type { Side } from '../../catalog/choices.ts'
import { locate } from '../../geometry/position/locate.ts'
import type { Located, Sighting } from '../../geometry/position/sightings.ts'
import { positionFromTwoTies } from '../../geometry/position/two-ties.ts'
import { measuredLength } from '../../measure/measured-length.ts'
import { METHODS, type Method, type MethodPreset } from '../../measure/methods.ts'
import type { StatedLength } from '../../measure/parse/length.ts'
import type { Step, Worked } from '../../measure/step.ts'
import { exact, type Uncertain } from '../../measure/uncertain.ts'
import type { AsBuiltComponent, Claim } from '../../records/as-built.ts'
import { statedValue } from '../../records/claim.ts'
import type { Reference } from '../../records/component.ts'
import { sameCorner } from '../../records/corner.ts'
import type { FoundComponent, SubmittedFindings } from '../../records/findings.ts'
import { type Part, partOnRecord, SYSTEM } from '../../records/part.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import type { Case } from '../case.ts'
import { beside, claimFact, type Fact, known, lacking } from '../fact.ts'
import type { Exhibit } from '../outcome.ts'
import { showLength, showTie } from '../show.ts'
import { anchorIn, fixExhibit, sightedFix } from './fix-place.ts'

/** Where a thing is: what was sighted of it in the frame of the two corners, and on which side of their line. */
export type Place = { readonly located: Located; readonly steps: readonly Step[] }

/** Baseline of the reference wall: as the inspection taped it, else as the record states it. */
type Baseline = { readonly length: Uncertain; readonly exhibit: Exhibit }
/** The inspection, and the rules where they are at hand: a drawing does without. */
type Placing = Pick<Case, 'findings'> & Partial<Pick<Case, 'book' | 'county'>>
type Presets = { readonly [M in Method]: MethodPreset }

/** How a length on record is off: by the rule that held when the part went in, else as record drawings are. */
export function recordPresets(built: AsBuiltComponent, { book, county }: Placing): Presets {
  const { approvedOn, issuedOn } = built.events[0].permit
  const day = approvedOn ?? issuedOn
  const rule =
    !book || !county || day === null
      ? null
      : inForceThroughout(book, county, 'position.record-accuracy-ft', day)
  if (rule?.state !== 'in-force') return METHODS
  const reading = { inches: 12 * rule.value.amount }
  return { ...METHODS, 'record-drawing': { ...METHODS['record-drawing'], reading } }
}

/** Where the record's ties put a component, each tie good to the accuracy that its record was held to. */
export function recordedPlace(built: AsBuiltComponent, given: Placing): Fact<Place> {
  const part = partOnRecord(built)
  const tie = claimFact(built.measures.tie, 'tie', part, showTie)
  if (tie.state !== 'known') return tie
  const presets = recordPresets(built, given)
  const baseline = baselineOf(built.reference, given.findings, presets)
  if (!baseline) return lacking({ gap: 'no-baseline' })
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
  if (place === null) return lacking({ gap: 'ties-do-not-meet', part, where: 'record' })
  return known(place, ...tie.exhibits, baseline.exhibit)
}

/** Where the inspection's ties put a component, in the frame of the same two corners. */
export function foundPlace(
  found: FoundComponent,
  { reference, part }: { readonly reference: Claim<Reference<StatedLength>>; readonly part: Part },
  findings: SubmittedFindings,
): Fact<Place> {
  const { tie, fix } = found
  const recorded = statedValue(reference)
  const seen = sightedFix(found, anchorIn(findings, recorded?.bearingDeg ?? null))
  if (!tie && !seen) return lacking({ gap: fix ? 'no-corner-fix' : 'no-ties', part })
  const corners = findings.record.reference
  if (corners && recorded && !(sameCorner(corners.a, recorded.a) && sameCorner(corners.b, recorded.b))) {
    return beside({
      aside: 'other-corners',
      found: [corners.a, corners.b],
      recorded: [recorded.a, recorded.b],
    })
  }
  const fixes = seen ? fixExhibits(found, part, findings) : []
  if (!tie) {
    const located: Located = { half: null, sightings: [seen!.value] }
    return known({ located, steps: seen!.steps }, ...fixes)
  }
  const baseline = baselineOf(reference, findings, METHODS)
  if (!baseline) return lacking({ gap: 'no-baseline' })
  const place = placed(
    taken(tie.a, `tie A of ${found.label}`),
    taken(tie.b, `tie B of ${found.label}`),
    baseline.length,
    tie.side,
  )
  if (place === null) return lacking({ gap: 'ties-do-not-meet', part, where: 'inspection' })
  const exhibit: Exhibit = {
    thing: 'tie',
    part,
    word: 'found',
    asStated: `A ${tie.a.asWritten}, B ${tie.b.asWritten}${tie.sideWords ? `, ${tie.sideWords}` : ''}`,
    used: showTie(tie),
    from: { kind: 'inspection', findings: findings.id, component: found.label, how: tie.a.method },
  }
  const joint = seen ? together(place, seen) : place
  return 'suspects' in joint
    ? lacking({ gap: 'sightings-disagree', part, suspects: joint.suspects })
    : known(joint, exhibit, baseline.exhibit, ...fixes)
}

type Suspects = { readonly suspects: readonly ('A' | 'B' | 'fix')[] }

/** Ties and fix in one estimate, each by its own uncertainty; the suspects where they do not fit one place. */
function together({ located, steps }: Place, seen: Worked<Sighting>): Place | Suspects {
  const all: Located = { ...located, sightings: [...located.sightings, seen.value] }
  const joint = locate(all)
  const { suspects } = joint.value
  return suspects.length > 0
    ? { suspects: suspects.map((name) => (name === 'A' || name === 'B' ? name : 'fix')) }
    : { located: all, steps: [...steps, ...seen.steps, ...joint.steps] }
}

/** What the receiver said of the part and of the corners. */
const fixExhibits = (
  { fix, label }: FoundComponent,
  part: Part,
  { id, record: { cornerA, cornerB } }: SubmittedFindings,
): readonly Exhibit[] => [
  ...(fix ? [fixExhibit(fix, 'fix', part, label, id)] : []),
  ...[cornerA, cornerB].flatMap((it) => (it ? [fixExhibit(it, 'corner-fix', null, null, id)] : [])),
]

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
        thing: 'baseline',
        part: SYSTEM,
        word: 'found',
        asStated: taped.asWritten,
        used: showLength(taped),
        from: { kind: 'inspection', findings: findings.id, component: null, how: taped.method },
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
      thing: 'baseline',
      part: SYSTEM,
      word: 'stated',
      asStated: stated.asWritten,
      used: showLength(stated),
      from: { kind: 'permit', origin: reference.origin },
    },
  }
}

const taken = ({ ft, method, instrument, halfStepFt }: FoundLength, name: string): Uncertain =>
  measuredLength(ft, method, `instrument: ${instrument}`, `reading: ${name}`, { halfStepFt })

function placed(a: Uncertain, b: Uncertain, baseline: Uncertain, side: Side | null): Place | null {
  if (Math.min(a.value, b.value, baseline.value) <= 0) return null
  const fix = positionFromTwoTies(a, b, baseline)
  if (!fix.ok) return null
  const half = side === null ? null : side === 'away' ? 1 : -1
  return {
    located: {
      half,
      sightings: [
        { kind: 'tie', corner: 'A', at: { x: exact(0), y: exact(0) }, tie: a },
        { kind: 'tie', corner: 'B', at: { x: baseline, y: exact(0) }, tie: b },
      ],
    },
    steps: fix.value.steps,
  }
}
