import type { DistanceName } from '../../catalog/distances.ts'
import { measuredLength } from '../../measure/measured-length.ts'
import type { StatedLength } from '../../measure/parse/length.ts'
import { exact, type Uncertain } from '../../measure/uncertain.ts'
import type { AsBuiltComponent } from '../../records/as-built.ts'
import type { FoundComponent } from '../../records/findings.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { Case } from '../case.ts'
import { claimFact, type Fact, known } from '../fact.ts'
import { KEPT_FROM, type KeptFrom } from '../kept-from.ts'
import { showLength } from '../show.ts'
import { reading } from './found-length.ts'
import { type Kept, partOf } from './kept-apart.ts'
import { recordPresets } from './place.ts'

export type DirectDistance = { readonly ft: Uncertain; readonly by: 'taped' | 'stated' }

/** The inspection's tape across; null where it has none, or the part was not found. */
export const tapedAcross = ({ found }: Kept, from: KeptFrom): FoundLength | null =>
  found?.outcome === 'found' ? (found[KEPT_FROM[from].field] ?? null) : null

/** Whether a permit says how far it is, legibly or not. */
export const isStated = ({ built }: Kept, from: KeptFrom): boolean =>
  built !== null && built.measures[KEPT_FROM[from].field].state !== 'silent'

/** As taped, with its uncertainty. */
export function tapedFact(found: FoundComponent, kept: Kept, from: KeptFrom, given: Case): Fact<Uncertain> {
  const { field } = KEPT_FROM[from]
  const read = reading(found[field]!, field, {
    part: partOf(kept),
    of: found.label,
    findings: given.findings?.id ?? '',
    alone: () => false,
  })
  return known(read.length, ...read.exhibits)
}

/**
 * A permit's figure as the length of a design: what is stated as 10 ft was approved as 10 ft, and is not called too close to
 * 10 ft. What it says to be about so far has the uncertainty of a record drawing.
 */
export function statedFact(
  built: AsBuiltComponent,
  kept: Kept,
  from: KeptFrom,
  given: Case,
): Fact<Uncertain> {
  const { field } = KEPT_FROM[from]
  const claim = claimFact(built.measures[field], field, partOf(kept), showLength)
  if (claim.state !== 'known') return claim
  const { value } = claim
  return known(value.approximate ? asDrawn(value, built, field, given) : exact(value.ft), ...claim.exhibits)
}

/** As a distance on a record drawing may be off: by the rule that held when the part went in. */
export const asDrawn = (
  { ft, halfStepFt }: StatedLength,
  built: AsBuiltComponent,
  field: DistanceName,
  given: Case,
): Uncertain =>
  measuredLength(ft, 'record-drawing', 'record drawing', `record: ${field} of ${built.label}`, {
    halfStepFt,
    presets: recordPresets(built, given),
  })
