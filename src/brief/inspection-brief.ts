import type { PlainDate } from '../base/plain-date.ts'
import { layOut, type ReconcileInput } from '../reconcile/case.ts'
import type { AsBuilt, Contradiction, PermitRef } from '../records/as-built.ts'
import type { Bring } from '../words/bring.ts'
import { CAUTIONS, type Caution, DEFERENCE } from '../words/cautions.ts'
import { bringFor } from './bring.ts'
import { type ExpectedLine, expectedLines } from './expected.ts'
import { hypotheticalInspection } from './hypothetical-inspection.ts'
import { rankMeasurements, type WantedMeasurement } from './measurements.ts'
import { type RecordedLine, recordedLines } from './recorded.ts'
import { type PaperRemark, paperRemarks } from './remarks.ts'
import { describeSitePlan } from './site-plan/describe.ts'
import { drawSitePlan } from './site-plan/draw.ts'
import { type SitePlan, sitePlan } from './site-plan/plan.ts'

export type InspectionBrief = {
  readonly asOf: PlainDate
  readonly permits: readonly PermitRef[]
  readonly unapproved: readonly PermitRef[]
  readonly contradictions: readonly Contradiction[]
  /** What the record says, line by line, each with how sure it is and where it stands. */
  readonly recorded: readonly RecordedLine[]
  /** What is usual where the record is silent; never a record. */
  readonly expected: readonly ExpectedLine[]
  readonly whereToLook: {
    readonly plan: SitePlan | null
    readonly svg: string | null
    readonly words: readonly string[]
  }
  /** What the papers say in words: landmarks, the drive, how deep. */
  readonly remarks: readonly PaperRemark[]
  readonly bring: readonly Bring[]
  /** Most telling first. */
  readonly measurements: readonly WantedMeasurement[]
  readonly cautions: readonly Caution[]
  readonly deference: string
}

/** What an inspector should know before going: a pure function of the file, the last inspection and the rules. */
export function inspectionBrief(input: ReconcileInput): InspectionBrief {
  const given = layOut({ ...input, findings: null })
  const { asBuilt } = given
  const plan = sitePlan(input.findings ? layOut(input) : given)
  return {
    asOf: input.asOf,
    permits: asBuilt.permits,
    unapproved: asBuilt.unapproved,
    contradictions: asBuilt.contradictions,
    recorded: recordedLines(asBuilt),
    expected: expectedLines(asBuilt, input.book, input.county, input.asOf),
    whereToLook: {
      plan,
      svg: plan && drawSitePlan(plan),
      words: plan ? describeSitePlan(plan) : [nowhere(asBuilt)],
    },
    remarks: paperRemarks(input.permits, asBuilt),
    bring: bringFor(asBuilt),
    measurements: rankMeasurements(input, hypotheticalInspection(asBuilt, input.asOf)),
    cautions: CAUTIONS,
    deference: DEFERENCE,
  }
}

const nowhere = ({ components }: AsBuilt): string =>
  components.length === 0
    ? 'Nothing is on record: start at the outlet of the building sewer and follow it with a camera and sonde.'
    : 'The record places nothing: no ties with a baseline. Start at the outlet of the building sewer and follow it with a camera and sonde.'
