import type { ComponentKind } from '../../catalog/kinds.ts'
import { regionsOf } from '../../geometry/position/region.ts'
import type { Located } from '../../geometry/position/sightings.ts'
import type { StatedLength } from '../../measure/parse/length.ts'
import type { Case } from '../../reconcile/case.ts'
import { foundPlace, recordedPlace } from '../../reconcile/facts/place.ts'
import { SILENT, statedValue } from '../../records/claim.ts'
import type { Reference } from '../../records/component.ts'
import type { Fix, SubmittedFindings } from '../../records/findings.ts'
import { partFound } from '../../records/part.ts'
import { type PlanLine, planLines } from './lines.ts'
import type { Mark } from './mark.ts'
import { type Ring, setbackRings, type Within } from './rings.ts'

export type SitePlan = {
  readonly reference: Pick<Reference<unknown>, 'a' | 'b' | 'wall' | 'bearingDeg'> & {
    readonly baselineFt: number
  }
  readonly marks: readonly Mark[]
  readonly lines: readonly PlanLine[]
  /** Setbacks from the wells on the plan, and what lies within them. */
  readonly rings: readonly Ring[]
  readonly within: readonly Within[]
  /** Found by satellite alone: the frame of the corners has no fix, so it is told and not drawn. */
  readonly fixes: readonly { readonly label: string; readonly fix: Fix }[]
  readonly coverage: number
}

/** What of a case places things: a stored reconciliation has it too. */
type Placing = Pick<Case, 'asBuilt' | 'pairings' | 'former' | 'unrecorded' | 'findings'> &
  Partial<Pick<Case, 'book' | 'county'>>

/** The plan of a case, a thing under one name whoever speaks of it; null where nothing can be placed, because there are no ties or no baseline. */
export function sitePlan(given: Placing, coverage = 0.95): SitePlan | null {
  const { pairings, former, unrecorded, findings } = given
  const reference = referenceOf(given)
  if (!reference) return null
  const recorded = pairings.flatMap(({ built }) => {
    const place = recordedPlace(built, given)
    return place.state === 'known'
      ? marks(built.label, built.kind, 'recorded', place.value.located, coverage)
      : []
  })
  const seen = findings
    ? [
        ...pairings.flatMap(({ built, found }) =>
          found ? [{ found, label: `${built.label}`, reference: built.reference }] : [],
        ),
        ...former.map(({ built, found }) => ({ found, label: found.label, reference: built.reference })),
        ...unrecorded.map((found) => ({ found, label: found.label, reference: SILENT })),
      ]
    : []
  const found = seen.flatMap((one) => {
    const place = foundPlace(
      one.found,
      { reference: one.reference, part: partFound(one.found) },
      findings as SubmittedFindings,
    )
    return place.state === 'known'
      ? marks(one.label, one.found.kind, 'found', place.value.located, coverage)
      : []
  })
  const all = [...recorded, ...found]
  if (all.length === 0) return null
  return {
    reference,
    marks: all,
    lines: planLines(given, all, reference.baselineFt),
    ...setbackRings(given, all),
    fixes: seen.flatMap(({ label, found: { fix } }) =>
      fix && !found.some((mark) => mark.label === label) ? [{ label, fix }] : [],
    ),
    coverage,
  }
}

function referenceOf({ asBuilt, findings }: Placing): SitePlan['reference'] | null {
  const inspection = findings?.record.reference ?? null
  const stated: Reference<StatedLength> | null | undefined = asBuilt.components
    .map(({ reference }) => statedValue(reference))
    .find((known) => known !== null && (known.baseline !== null || inspection?.baseline))
  const baseline = inspection?.baseline ?? stated?.baseline
  const named = stated ?? inspection
  if (!baseline || !named) return null
  const { a, b, wall } = named
  return {
    a,
    b,
    wall,
    bearingDeg: named.bearingDeg ?? inspection?.bearingDeg ?? null,
    baselineFt: baseline.ft,
  }
}

const marks = (
  label: string,
  kind: ComponentKind,
  by: Mark['by'],
  located: Located,
  coverage: number,
): readonly Mark[] => {
  const regions = regionsOf(located, coverage)
  return regions.map((region) => ({ label, kind, by, ...region.best, region, mirror: regions.length > 1 }))
}
