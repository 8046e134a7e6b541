import { compareWithStated } from '../../measure/compare.ts'
import type { StatedVolume } from '../../measure/parse/volume.ts'
import type { Origin } from '../../records/as-built.ts'
import { partOnRecord } from '../../records/part.ts'
import { inForce } from '../../rules/in-force.ts'
import type { Case } from '../case.ts'
import type { Pairing } from '../pairing.ts'
import { measured, type Quantity } from '../quantity.ts'
import { foundCapacity } from './capacity.ts'

/** Of permits that contradict each other, the one that a measurement bears out. */
export type BorneOut = {
  readonly value: StatedVolume
  readonly origin: Origin
  readonly found: Quantity
}

/**
 * Where permits give a tank several sizes, what was measured decides when it agrees with just one of them, within the
 * nominal tolerance and without leaning on its own uncertainty, and differs from all others beyond both.
 */
export function borneOut({ built, found }: Pairing, given: Case): BorneOut | null {
  const { capacity } = built.measures
  if (capacity.state !== 'contradictory' || found?.outcome !== 'found') return null
  const holds = foundCapacity(found, given.findings?.id ?? '', partOnRecord(built))
  const [tolerance, usable] = (['tank.nominal-tolerance-pct', 'tank.usable-uncertainty-pct'] as const).map(
    (name) => inForce(given.book, given.county, name, given.asBuilt.on),
  )
  if (holds.state !== 'known' || tolerance?.state !== 'in-force' || usable?.state !== 'in-force') return null
  const { gal } = holds.value
  const compared = capacity.claims.map((claim) => {
    const part = (pct: number) => (pct / 100) * claim.value.gal
    const { value } = compareWithStated(gal, claim.value.gal, {
      tolerance: part(tolerance.value.amount),
      usableUncertainty: part(usable.value.amount),
      unit: 'gal',
    })
    return { claim, ...value }
  })
  const agreeing = compared.filter(({ verdict }) => verdict === 'agrees')
  const [only] = agreeing
  const others = compared.filter((it) => it !== only)
  if (!only || only.onlyThanksToUncertainty) return null
  if (!others.every(({ verdict }) => verdict === 'smaller' || verdict === 'larger')) return null
  return { ...only.claim, found: measured(gal, 'gal') }
}
