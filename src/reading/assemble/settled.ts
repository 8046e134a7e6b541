import type { PageWords } from '../page-words.ts'
import type { ProposedField, ProposedPermit } from '../proposal.ts'
import { calibrated, LEAST_PROPOSED, ofOwnText } from './calibrated.ts'
import { entryFrom, missingFrom } from './entry.ts'
import type { OwnShares } from './own-shares.ts'

/** What makes a component at all; without it nothing that the paper says of it has a place. */
const MAKES_A_COMPONENT = /^\/components\/\d+\/(?:tag|kind|action)$/

/**
 * A proposal with measured confidence: what is not sure enough leaves its field empty and stands under `unsure`, with
 * the place on the page where a person finds it. The parcel's number stays, for the county's own list judges it.
 */
export function settled(
  proposal: ProposedPermit,
  pages: readonly PageWords[],
  own: OwnShares,
): ProposedPermit {
  const pictures = new Set(pages.filter(({ readBy }) => readBy === 'picture').map(({ page }) => page))
  const isJudged = ({ pointer, page }: ProposedField): boolean =>
    pictures.has(page) && !MAKES_A_COMPONENT.test(pointer)
  const measured = (field: ProposedField): ProposedField =>
    isJudged(field)
      ? calibrated(field, own)
      : MAKES_A_COMPONENT.test(field.pointer)
        ? field
        : ofOwnText(field, own)
  const isSure = (field: ProposedField): boolean => !isJudged(field) || field.confidence >= LEAST_PROPOSED
  const all = proposal.fields.map(measured)
  const address = proposal.address && measured(proposal.address)
  const fields = all.filter(isSure)
  const entry = entryFrom(fields)
  return {
    ...proposal,
    fields,
    entry,
    parcelNumber: proposal.parcelNumber && measured(proposal.parcelNumber),
    address: address && isSure(address) ? address : null,
    missing: missingFrom(entry, proposal.parcelNumber !== null),
    unsure: [...all, ...(address ? [address] : [])].filter((field) => !isSure(field)),
  }
}
