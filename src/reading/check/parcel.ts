import type { ProposedPermit } from '../proposal.ts'
import { confusedReadings } from '../values/corrected.ts'

/** Parcel numbers worth looking up for a proposal: the one read, and those one usual confusion of figures away. */
export const parcelCandidates = ({ parcelNumber }: ProposedPermit): readonly string[] =>
  parcelNumber === null ? [] : [String(parcelNumber.value), ...confusedReadings(String(parcelNumber.value))]

/** A proposal against the parcels that exist among its candidates; a number that no parcel has is in doubt. */
export function checkedParcel(proposal: ProposedPermit, existing: ReadonlySet<string>): ProposedPermit {
  const { parcelNumber } = proposal
  if (parcelNumber === null) return proposal
  if (existing.has(String(parcelNumber.value)))
    return {
      ...proposal,
      parcelNumber: { ...parcelNumber, confidence: 1 - (1 - parcelNumber.confidence) * 0.3 },
    }
  const readings = parcelCandidates(proposal).filter((candidate) => existing.has(candidate))
  return {
    ...proposal,
    parcelNumber: {
      ...parcelNumber,
      confidence: parcelNumber.confidence * 0.4,
      doubts: [
        ...parcelNumber.doubts,
        {
          kind: 'not-in-county',
          says: `no parcel of the county has the number ${parcelNumber.value}`,
          readings,
        },
      ],
    },
  }
}
