import { compareWithStated } from '../../measure/compare.ts'
import { printGal, printGalWithU } from '../../measure/print/gallons.ts'
import { isVessel } from '../../records/component.ts'
import { the } from '../../records/naming.ts'
import { aboutPairing, allowed, firm, likely, open, type SeenPairing, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { foundCapacity, recordedCapacity } from '../facts/capacity.ts'
import { bestMeasurement } from '../settle.ts'

/**
 * A tank sold as 1,000 gal holds somewhat more or less at its outlet invert, so the record is met within a nominal
 * tolerance on top of the measurement's own uncertainty. A measurement too rough to see a difference decides nothing.
 */
export const capacityAgainstRecord = check({
  id: 'capacity-against-record',
  question: 'Does the tank hold what the record says?',
  raises: ['capacity-below-record', 'capacity-above-record', 'measurement-unclear'],
  subjects: ({ pairings }): readonly SeenPairing[] =>
    pairings.filter(wasSeen).filter(({ built }) => isVessel(built.kind)),
  about: aboutPairing,
  facts: {
    recorded: ({ built }) => recordedCapacity(built),
    found: ({ found }, { findings }) => foundCapacity(found, findings?.id ?? ''),
  },
  rules: {
    tolerancePct: { name: 'tank.nominal-tolerance-pct', on: (_, given) => given.asBuilt.on },
    usablePct: { name: 'tank.usable-uncertainty-pct', on: (_, given) => given.asBuilt.on },
  },
  decide({ recorded, found }, { tolerancePct, usablePct }, { built }) {
    const rule = {
      tolerance: (tolerancePct.value.amount / 100) * recorded.gal,
      usableUncertainty: (usablePct.value.amount / 100) * recorded.gal,
      unit: 'gal',
    }
    const compared = compareWithStated(found.gal, recorded.gal, rule)
    const { verdict, onlyThanksToUncertainty } = compared.value
    const numbers = `${the(built.label)} comes to ${printGalWithU(found.gal)}; the record says ${printGal(recorded.gal)}, give or take ${printGal(rule.tolerance)} for a nominal size`
    const steps = [...found.steps, ...compared.steps]
    const exhibits = [allowed('nominal tolerance', `${tolerancePct.value.amount} %`, tolerancePct)]
    switch (verdict) {
      case 'agrees':
        return {
          verdict: 'agrees',
          raises: null,
          because: onlyThanksToUncertainty
            ? `${numbers}: it agrees only thanks to the measurement's uncertainty`
            : numbers,
          certainty: onlyThanksToUncertainty
            ? likely('outside the nominal tolerance by itself, within it by the uncertainty of the readings')
            : firm('within the nominal tolerance'),
          exhibits,
          steps,
        }
      case 'smaller':
      case 'larger':
        return {
          verdict: 'differs',
          raises: verdict === 'smaller' ? 'capacity-below-record' : 'capacity-above-record',
          because: numbers,
          certainty: firm('beyond the nominal tolerance and the expanded uncertainty (k = 2) together'),
          exhibits,
          steps,
        }
      case 'cannot-tell':
        return {
          verdict: 'cannot-tell',
          raises: 'measurement-unclear',
          because: `${numbers}: these measurements are too rough to tell`,
          certainty: open('the expanded uncertainty is larger than what can decide the question'),
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
