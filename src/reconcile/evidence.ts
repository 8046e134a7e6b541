import type { Exhibit, Outcome } from './outcome.ts'
import type { Reason } from './reason.ts'
import type { Discrepancy } from './reconcile.ts'

/**
 * What a decision about a discrepancy rests on: the verdict and the facts as used, each with the paper or the part it
 * comes from. Left out on purpose: the revision of a paper (another value on it may have been corrected), which
 * inspection it was (the same reading taken again moves no ground), and the day on which the question was asked.
 */
export const evidenceOf = ({ kind, severity, outcome }: Discrepancy) => ({
  kind,
  severity,
  verdict: outcome.verdict,
  certainty: outcome.certainty.word,
  exhibits: outcome.exhibits.map(({ thing, part, word, asStated, used, from }) => ({
    thing,
    part: part?.key ?? null,
    word,
    asStated,
    used,
    from: placeOf(from),
  })),
  citations: outcome.citations.map(({ authority, document, edition, section }) => ({
    authority,
    document,
    edition,
    section,
  })),
  reason: outcome.exhibits.length === 0 ? lasting(outcome) : null,
})

/** An outcome that shows no exhibits rests on its reason, without the day on which it was asked. */
function lasting({ reason }: Outcome): Reason {
  switch (reason.is) {
    case 'never-approved':
    case 'permits-on-file':
      return { ...reason, by: '0000-01-01' as typeof reason.by }
    default:
      return reason
  }
}

function placeOf(from: Exhibit['from']) {
  switch (from.kind) {
    case 'permit':
      return { permit: from.origin.permit.id, pointer: from.origin.pointer }
    case 'inspection':
      return { component: from.component, how: from.how }
    // By its figure and its citations, which stand beside: how they are worded moves no ground.
    case 'rule':
    case 'computed':
      return null
  }
}
