import { isVessel } from '../../catalog/kinds.ts'
import { compareWithStated } from '../../measure/compare.ts'
import { notIn } from '../../measure/expanded-steps.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, allowed, firm, likely, open, type SeenPairing, wasSeen } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { type Fact, known } from '../fact.ts'
import { borneOut } from '../facts/borne-out.ts'
import { foundCapacity, recordedCapacity } from '../facts/capacity.ts'
import { exactly, measured } from '../quantity.ts'
import type { ReasonOf } from '../reason.ts'
import { bestMeasurement } from '../settle.ts'
import { showVolume } from '../show.ts'

/**
 * A tank sold as 1,000 gal holds somewhat more or less at its outlet invert, so the record is met within a nominal
 * tolerance on top of the measurement's own uncertainty. A measurement too rough to see a difference decides nothing.
 */
export const capacityAgainstRecord = check({
  id: 'capacity-against-record',
  raises: ['capacity-below-record', 'capacity-above-record', 'measurement-unclear'],
  subjects: ({ pairings }): readonly SeenPairing[] =>
    pairings.filter(wasSeen).filter(({ built }) => isVessel(built.kind)),
  about: aboutPairing,
  facts: {
    recorded: (pairing, given) => recordedOrBorneOut(pairing, given),
    found: ({ built, found }, { findings }) => foundCapacity(found, findings?.id ?? '', partOnRecord(built)),
  },
  rules: {
    tolerancePct: { name: 'tank.nominal-tolerance-pct', on: (_, given) => given.asBuilt.on },
    usablePct: { name: 'tank.usable-uncertainty-pct', on: (_, given) => given.asBuilt.on },
  },
  decide({ recorded, found }, { tolerancePct, usablePct }, pairing, given) {
    const permit = borneOut(pairing, given)?.origin.permit.number
    const rule = {
      tolerance: (tolerancePct.value.amount / 100) * recorded.gal,
      usableUncertainty: (usablePct.value.amount / 100) * recorded.gal,
      unit: 'gal',
    }
    const compared = compareWithStated(found.gal, recorded.gal, rule)
    const { verdict, onlyThanksToUncertainty } = compared.value
    const steps = [...found.steps, ...notIn(found.steps, compared.steps)]
    const exhibits = [allowed('nominal-tolerance', exactly(tolerancePct.value.amount, '%'), tolerancePct)]
    const reason = (comes: ReasonOf<'capacity-record'>['comes']) => ({
      is: 'capacity-record' as const,
      found: measured(found.gal, 'gal'),
      recorded: exactly(recorded.gal, 'gal'),
      tolerance: exactly(rule.tolerance, 'gal'),
      ...(permit === undefined ? {} : { permit }),
      comes,
    })
    switch (verdict) {
      case 'agrees':
        return {
          verdict: 'agrees',
          raises: null,
          reason: reason(onlyThanksToUncertainty ? 'agrees-by-uncertainty' : 'agrees'),
          certainty: onlyThanksToUncertainty ? likely('within-by-uncertainty') : firm('within-tolerance'),
          exhibits,
          steps,
        }
      case 'smaller':
      case 'larger':
        return {
          verdict: 'differs',
          raises: verdict === 'smaller' ? 'capacity-below-record' : 'capacity-above-record',
          reason: reason(verdict),
          certainty: firm('beyond-tolerance'),
          exhibits,
          steps,
        }
      case 'cannot-tell':
        return {
          verdict: 'cannot-tell',
          raises: 'measurement-unclear',
          reason: reason('too-rough'),
          certainty: open('too-rough'),
          exhibits,
          steps,
          wouldSettle: bestMeasurement(
            found,
            'gal',
            (after) => compareWithStated(after, recorded.gal, rule).value.verdict !== 'cannot-tell',
          ),
        }
    }
  },
})

/** Permits that contradict each other give no size, until a measurement bears one of them out. */
function recordedOrBorneOut(pairing: SeenPairing, given: Case): Fact<{ readonly gal: number }> {
  const decided = borneOut(pairing, given)
  if (!decided) return recordedCapacity(pairing.built)
  const { value, origin } = decided
  return known(value, {
    thing: 'capacity',
    part: partOnRecord(pairing.built),
    word: 'stated',
    asStated: value.asWritten,
    used: showVolume(value),
    from: { kind: 'permit', origin },
  })
}
