import { ok } from '../../base/result.ts'
import { inspectionBrief } from '../../brief/inspection-brief.ts'
import { printBrief } from '../../letters/content/brief.ts'
import { asBuiltOn } from '../../records/fold.ts'
import { asService } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import type { Drafting } from './draft.ts'
import { gatherFacts } from './gather-facts.ts'

/** What to know before an inspection. Where things were found last is told to a firm only by an inspection of its own. */
export const draftBrief: Drafting = ({ within, context, actor, system, status }) =>
  transact(within, asService(actor), async (tx) => {
    const { input, findings } = await gatherInput(tx, context, actor.county, system)
    const closed = actor.role === 'firm' && findings?.organization !== actor.organization
    const seen = closed ? { ...input, findings: null } : input
    const { components } = asBuiltOn(input.permits, input.corrections, input.asOf, input.system?.serves)
    const now = await gatherFacts(tx, actor.county, [system], status.word)
    return ok({
      asOf: input.asOf,
      reconciliation: null,
      facts: { ...now, differences: null, word: null, findings: closed ? null : now.findings },
      contents: (frame) => [printBrief(frame, { brief: inspectionBrief(seen), components })],
      mostPages: null,
    })
  })
