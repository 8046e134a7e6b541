import { must } from '../../src/base/result.ts'
import { readDocumentTaken } from '../../src/operations/documents/read-document.ts'
import type { ProposedPermit } from '../../src/reading/proposal.ts'

type Asking = Parameters<typeof readDocumentTaken>

/** A document with everything that was proposed, in order. */
export async function wholeDocument(context: Asking[0], actor: Asking[1], id: string) {
  const all = await readDocumentTaken(context, actor, id, ({ permits }) => permits.map((_, place) => place))
  const read = must(all)
  const proposals: readonly ProposedPermit[] = [...read.proposals.values()]
  return { ...read, proposals }
}
