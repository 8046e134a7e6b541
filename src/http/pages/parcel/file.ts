import { describeSitePlan } from '../../../brief/site-plan/describe.ts'
import { drawSitePlan } from '../../../brief/site-plan/draw.ts'
import { sitePlan } from '../../../brief/site-plan/plan.ts'
import type { ParcelFileRead } from '../../../operations/parcels/read-parcel-file.ts'
import type { Case } from '../../../reconcile/case.ts'
import { pair } from '../../../reconcile/pairing.ts'
import type { SubmittedFindings } from '../../../records/findings.ts'
import type { RuleBook } from '../../../rules/book.ts'
import type { Letter } from '../../../store/letters.ts'
import { type LettersShown, presentLetters } from '../letter/present.ts'
import { type Comparison, presentComparison } from './comparison/present.ts'
import { type DecideForm, presentDecideForm, type Returned } from './decide-form.ts'
import { type Difference, presentDifference } from './difference.ts'
import { type Happened, presentHistory } from './history.ts'
import { type PaperLine, presentDocuments, presentElsewhere, presentPermits } from './papers.ts'
import { type InspectionPhotos, presentPhotos } from './photos.ts'
import { fileAddress, presentSystems, type SystemLine } from './systems.ts'

export type Plan = { readonly svg: string; readonly words: readonly string[] }

/** What a parcel's page shows to whoever works with its file. */
export type ParcelFilePage = {
  readonly parcel: ParcelFileRead['parcel']
  readonly oldNumbers: ParcelFileRead['oldNumbers']
  readonly status: ParcelFileRead['status']
  readonly systems: readonly SystemLine[]
  /** What the pages about the file shown are asked for by: the parcel, and which of its systems where there are several. */
  readonly address: string
  /** The reader may say what there is. */
  readonly reviews: boolean
  /** Worst first. */
  readonly differences: readonly Difference[]
  /** By discrepancy; empty for whoever may not decide. */
  readonly forms: ReadonlyMap<string, DecideForm>
  readonly comparison: Comparison | null
  /** The record alone is shown: what others found is not for this reader. */
  readonly recordAlone: boolean
  readonly plan: Plan | null
  readonly photos: readonly InspectionPhotos[]
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
  book: RuleBook,
  at: string,
): ParcelFilePage {
  const { parcel, oldNumbers, status, file, reconciliation, record, inspection, decisions, names } = read
  const result = read.result ?? record?.result
  const county = reconciliation?.inputs.place ?? record?.county
  const standing = file?.discrepancies ?? []
  return {
    parcel,
    oldNumbers,
    status,
    systems: presentSystems(read),
    address: fileAddress(read),
    reviews: audience === 'reviewer',
    differences: standing.map((it) => presentDifference(it, decisions, names, audience)),
    forms: new Map(
      audience === 'reviewer' && result
        ? standing.map((it) => [it.id, presentDecideForm(it, result.asBuilt, returned)])
        : [],
    ),
    comparison: result ? presentComparison(result, inspection?.record ?? null) : null,
    recordAlone: !reconciliation && record !== null,
    plan:
      result && county
        ? presentPlan({ asBuilt: result.asBuilt, findings: submitted(inspection), book, county })
        : null,
    photos: presentPhotos(file?.findings ?? [], read.photos),
    history: presentHistory(read, letters),
    permits: [
      ...presentPermits(at, file?.permits ?? []),
      ...presentElsewhere(at, file?.permitsElsewhere ?? [], parcel.id),
    ],
    documents: presentDocuments(file?.documents ?? []),
    letters: presentLetters(letters, audience),
    names,
  }
}

/** Drawn from the as-built and the inspection that were compared, so that the plan and the lines never speak of two days. */
export function presentPlan(given: Pick<Case, 'asBuilt' | 'findings' | 'book' | 'county'>): Plan | null {
  const plan = sitePlan({ ...given, ...pair(given.asBuilt, given.findings?.record ?? null) })
  return plan && { svg: drawSitePlan(plan), words: describeSitePlan(plan) }
}

export const submitted = (inspection: ParcelFileRead['inspection']): SubmittedFindings | null =>
  inspection && {
    id: inspection.id,
    firm: inspection.organization,
    submittedOn: inspection.record.inspectedOn,
    record: inspection.record,
  }
