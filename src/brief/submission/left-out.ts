import type { EntryIssue } from '../../reading/entry/issues.ts'
import { layOut, type ReconcileInput } from '../../reconcile/case.ts'
import { completeness, type ProtocolAnswer } from '../../reconcile/completeness.ts'
import type { SubmittedFindings } from '../../records/findings.ts'
import { inForce } from '../../rules/in-force.ts'
import type { Step } from '../../rules/values/protocol.ts'
import { isOrAre, itOrThem, the } from '../../words/part.ts'
import { STEP_DONE } from '../../words/reasons-of-inspecting.ts'
import { capital } from '../../words/sentence.ts'

/**
 * What the county's protocol can't do without and the inspection leaves out without saying why: each at the field where it
 * is said. An inspection may be incomplete; it may not be silent about it.
 */
export function leftOutUnsaid(input: ReconcileInput, findings: SubmittedFindings): readonly EntryIssue[] {
  const given = layOut({ ...input, findings })
  const protocol = inForce(given.book, given.county, 'inspection.protocol', given.asBuilt.on)
  if (protocol.state !== 'in-force') return []
  const unsaid = completeness(given, protocol.value).filter(
    ({ item, end, why }) => item.needed && end === 'left-out' && why === null,
  )
  // One thing to say of a part at a time: a tank that nobody opened was not read either.
  return unsaid
    .filter(
      ({ part }, at) => part.kind === 'system' || unsaid.findIndex((it) => it.part.key === part.key) === at,
    )
    .map((answer) => issueOf(answer, findings))
}

function issueOf({ item: { step }, part }: ProtocolAnswer, { record }: SubmittedFindings): EntryIssue {
  if (part.kind === 'system') return OF_SYSTEM[step] ?? { pointer: '/leftOutBecause', message: NOT_DONE }
  const at = record.components.findIndex(({ key, label }) => (key ?? `found/${label}`) === part.key)
  const found = record.components[at]
  if (!found)
    return {
      pointer: '/components/-',
      message: `${capital(the(part))} ${isOrAre(part)} on record: say whether the inspection found ${itOrThem(part)} or, if nobody got there, why`,
    }
  if (found.outcome === 'not-looked-for')
    return {
      pointer: `/components/${at}/outcome`,
      message: `an inspection cannot do without ${the(part)}: look for it, or say that it was not reached and why`,
    }
  return step === 'open'
    ? {
        pointer: `/components/${at}/opened`,
        message: `say how far ${the(part)} was opened and, if its cover stayed on, why`,
      }
    : {
        pointer: `/components/${at}/leftOutBecause`,
        message: `${the(part)} was not ${STEP_DONE[step]}: do it, or say why it was left out`,
      }
}

const NOT_DONE = 'something that the protocol requires was left out: do it, or say why'

const OF_SYSTEM: { readonly [S in Step]?: EntryIssue } = {
  'walk-ground': {
    pointer: '/notWalkedBecause',
    message: 'say how the ground looked over the drainfield or, if nobody walked it, why',
  },
  'ask-backup': {
    pointer: '/backup',
    message: 'ask whether sewage has backed up into the house or, if nobody was there to ask, say so',
  },
  'run-water': {
    pointer: '/leftOutBecause',
    message: 'the house stood empty: run water and say how much, or say why none was run',
  },
  'locate-outflow': {
    pointer: '/leftOutBecause',
    message: 'find where the flow from the tank goes and add that part, or say why nobody found it',
  },
}
