import { compareDates } from '../base/plain-date.ts'
import type { AsBuilt, Claim, Correction, PermitRef } from './as-built.ts'
import { stated } from './claim.ts'

/**
 * Reviewers' corrections, oldest first. A correction changes what one permit is taken to say, so it holds on every day
 * on which that permit is part of the fold, whenever it was made; each value keeps the decision that set it.
 */
export function applyCorrections(asBuilt: AsBuilt, corrections: readonly Correction[]): AsBuilt {
  return [...corrections].sort((a, b) => compareDates(a.on, b.on)).reduce(correct, asBuilt)
}

function correct(asBuilt: AsBuilt, correction: Correction): AsBuilt {
  const permit = asBuilt.permits.find(({ id }) => id === correction.permit)
  if (!permit) return asBuilt
  if (correction.component === null) return { ...asBuilt, [correction.field]: claimBy(correction, permit) }
  return {
    ...asBuilt,
    components: asBuilt.components.map((known) =>
      known.key === correction.component
        ? { ...known, measures: { ...known.measures, [correction.field]: claimBy(correction, permit) } }
        : known,
    ),
  }
}

const claimBy = ({ field, value, decision, by }: Correction, permit: PermitRef): Claim<unknown> =>
  stated(value, { permit, pointer: `/${field}`, source: { kind: 'correction', decision, by } })
