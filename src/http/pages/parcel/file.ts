import { describeSitePlan } from '../../../brief/site-plan/describe.ts'
import { drawSitePlan } from '../../../brief/site-plan/draw.ts'
import { sitePlan } from '../../../brief/site-plan/plan.ts'
import type { ParcelFileRead } from '../../../operations/parcels/read-parcel-file.ts'
import { pair } from '../../../reconcile/pairing.ts'
import type { AsBuilt } from '../../../records/as-built.ts'
import type { SubmittedFindings } from '../../../records/findings.ts'
import type { Letter } from '../../../store/letters.ts'
import { type LettersShown, presentLetters } from '../letter/present.ts'
import { type Comparison, presentComparison } from './comparison/present.ts'
import { type DecideForm, presentDecideForm, type Returned } from './decide-form.ts'
import { type Difference, presentDifference } from './difference.ts'
import { type Happened, presentHistory } from './history.ts'
import { type PaperLine, presentDocuments, presentPermits } from './papers.ts'
import { presentPhotos, type VisitPhotos } from './photos.ts'

export type Plan = { readonly svg: string; readonly words: readonly string[] }

/** What a parcel's page shows to whoever works with its file. */
export type ParcelFilePage = {
  readonly parcel: ParcelFileRead['parcel']
  readonly oldNumbers: ParcelFileRead['oldNumbers']
  readonly status: ParcelFileRead['status']
  /** Worst first. */
  readonly differences: readonly Difference[]
  /** By discrepancy; empty for whoever may not decide. */
  readonly forms: ReadonlyMap<string, DecideForm>
  readonly comparison: Comparison | null
  readonly plan: Plan | null
  readonly photos: readonly VisitPhotos[]
  readonly history: readonly Happened[]
  readonly permits: readonly PaperLine[]
  readonly documents: readonly PaperLine[]
  readonly letters: LettersShown
  readonly names: ReadonlyMap<string, string>
}

export function presentParcelFile(
  read: ParcelFileRead,
  audience: 'reviewer' | 'firm',
  letters: readonly Letter[],
  returned: Returned | null,
): ParcelFilePage {
  const { parcel, oldNumbers, status, file, reconciliation, visit, decisions, names } = read
  const result = reconciliation?.result
  const standing = file?.discrepancies ?? []
  return {
    parcel,
    oldNumbers,
    status,
    differences: standing.map((it) => presentDifference(it, decisions, names, audience)),
    forms: new Map(
      audience === 'reviewer' && result
        ? standing.map((it) => [it.id, presentDecideForm(it, result.asBuilt, returned)])
        : [],
    ),
    comparison: result ? presentComparison(result, visit?.record ?? null) : null,
    plan: result ? presentPlan(result.asBuilt, submitted(visit)) : null,
    photos: presentPhotos(file?.findings ?? [], read.photos),
    history: presentHistory(read, letters),
    permits: presentPermits(file?.permits ?? []),
    documents: presentDocuments(file?.documents ?? []),
    letters: presentLetters(letters, audience),
    names,
  }
}

/** Drawn from the as-built and the visit that were compared, so that the plan and the lines never speak of two days. */
export function presentPlan(asBuilt: AsBuilt, findings: SubmittedFindings | null): Plan | null {
  const plan = sitePlan({ asBuilt, findings, ...pair(asBuilt, findings?.record ?? null) })
  return plan && { svg: drawSitePlan(plan), words: describeSitePlan(plan) }
}

export const submitted = (visit: ParcelFileRead['visit']): SubmittedFindings | null =>
  visit && {
    id: visit.id,
    firm: visit.organisation,
    submittedOn: visit.record.visitedOn,
    record: visit.record,
  }
