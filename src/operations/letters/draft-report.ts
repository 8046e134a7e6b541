import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { sitePlan } from '../../brief/site-plan/plan.ts'
import { type DecisionInReport, report } from '../../letters/content/report.ts'
import type { LetterFacts } from '../../letters/facts.ts'
import { layOut } from '../../reconcile/case.ts'
import { asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { decisionsInForce } from '../../store/decisions.ts'
import { discrepanciesOf } from '../../store/discrepancies.ts'
import { organizationNames } from '../../store/organizations.ts'
import { newestReconciliation, type StoredReconciliation } from '../../store/reconciliations.ts'
import { fullAnswer } from '../reconciliation/full-answer.ts'
import { regather } from '../reconciliation/replay-reconciliation.ts'
import { conflict } from '../refusal.ts'
import type { Drafting } from './draft.ts'
import { gatherFacts } from './gather-facts.ts'
import { reportPhotos } from './report-photos.ts'

const NONE =
  'There is no reconciliation of this parcel that you can see. Submit an inspection or enter a permit first.'

/** The newest reconciliation that the asker may see, as it was made: a firm's own, for a reviewer the parcel's. */
export const draftReport: Drafting = async ({ tx, within, context, actor, system, status }) => {
  const { county } = actor
  const stored = await newestReconciliation(tx, county, system.id)
  if (!stored) return conflict(NONE)
  const decisions = await decisionsShown(tx, county, stored)
  const photos = await reportPhotos(tx, context.files, county, stored.findings)
  return transact(within, asService(actor), async (service) => {
    const { input, missing } = await regather(service, county, stored)
    const { result } = await fullAnswer(service, county, stored)
    if (!input) {
      return conflict(`What the newest reconciliation rests on is not all kept: ${missing.join(', ')}.`)
    }
    const firm = stored.organization
      ? (await organizationNames(service, [stored.organization])).get(stored.organization)
      : undefined
    const newest = await newestReconciliation(service, county, system.id)
    const now = await gatherFacts(service, county, [system], status.word)
    return ok({
      asOf: stored.result.asOf as typeof status.asOf,
      reconciliation: stored,
      facts: factsOf(stored, newest?.id === stored.id ? now.differences : null),
      contents: (frame) => [
        report(frame, {
          audience: actor.role === 'reviewer' ? 'reviewer' : 'firm',
          reconciliation: result,
          plan: sitePlan(layOut(input)),
          decisions,
          photos,
          firm: firm ?? null,
          fingerprints: fingerprintsOf(stored),
        }),
      ],
      mostPages: null,
      pictures: photos.pictures,
    })
  })
}

/** In the asker's name. A decision is shown with the difference it is about, while its ground has not moved. */
async function decisionsShown(
  tx: Tx,
  county: string,
  { system }: StoredReconciliation,
): Promise<readonly DecisionInReport[]> {
  const standing = await discrepanciesOf(tx, county, system)
  const decisions = await decisionsInForce(tx, county, system)
  return standing.flatMap(({ key, state, decision: id }) => {
    const decision = decisions.find((it) => it.id === id)
    if (!decision || state !== 'decided') return []
    const { action, reason, decidedAt } = decision
    return [{ key, action, reason, on: dayOf(decidedAt) }]
  })
}

/** By the inputs it names, which may be older than what stands now. */
const factsOf = (
  { inputs, system }: StoredReconciliation,
  differences: LetterFacts['differences'],
): LetterFacts => ({
  systems: [system],
  permits: inputs.permits.map(({ id, revision }) => ({ id, revision })),
  corrections: inputs.corrections.map(({ decision }) => decision),
  findings: { id: inputs.findings?.id ?? null },
  differences,
  word: null,
})

const fingerprintsOf = ({ id, inputHash, resultHash, inputs, engine }: StoredReconciliation) => [
  { what: 'Reconciliation', value: id },
  { what: 'Answer, SHA-256', value: resultHash },
  { what: 'Inputs, SHA-256', value: inputHash },
  { what: 'Rules, SHA-256', value: inputs.ruleBook },
  { what: 'Computed by', value: engine },
]
