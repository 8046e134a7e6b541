import type { Exhibit } from './outcome.ts'
import type { Discrepancy } from './reconcile.ts'

/**
 * What a decision about a discrepancy rests on: the verdict and the facts as used, each with the paper or the part it
 * comes from. Left out on purpose: the wording (which an update of this program may change), the revision of a paper
 * (another value on it may have been mended) and which inspection it was (the same reading taken again moves no ground).
 *
 * An outcome that shows no exhibits rests on its sentence, without the day on which it was asked.
 */
export const evidenceOf = ({ kind, severity, outcome }: Discrepancy, asOf: string) => ({
  kind,
  severity,
  verdict: outcome.verdict,
  certainty: outcome.certainty.word,
  exhibits: outcome.exhibits.map(({ what, word, asStated, asUsed, from }) => ({
    what,
    word,
    asStated,
    asUsed,
    from: placeOf(from),
  })),
  citations: outcome.citations.map(({ authority, document, edition, section }) => ({
    authority,
    document,
    edition,
    section,
  })),
  says: outcome.exhibits.length === 0 ? outcome.because.replaceAll(asOf, 'today') : null,
})

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
