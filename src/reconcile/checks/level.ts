import { daysBetween } from '../../base/plain-date.ts'
import { printLength } from '../../measure/print/length.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { expanded } from '../../measure/uncertain.ts'
import { isVessel } from '../../records/component.ts'
import { the } from '../../records/naming.ts'
import { aboutSeen, firm, open, seen } from '../about.ts'
import { check } from '../check.ts'
import { beside, known, lacking } from '../fact.ts'
import { reading } from '../facts/found-length.ts'

/** A tank pumped so lately may not have filled again: a low level then says nothing (common practice). */
const REFILL_DAYS = 14

/** The level is a finding of its own and changes no capacity: above the outlet it backs up, below it leaks or is empty. */
export const level = check({
  id: 'level',
  question: 'Does the liquid stand at the outlet invert?',
  raises: ['level-high', 'level-low'],
  subjects: ({ findings, former }) =>
    (findings?.record.components ?? [])
      .filter(({ kind, outcome }) => kind !== 'pump-chamber' && isVessel(kind) && outcome === 'found')
      .filter((found) => !former.some((old) => old.found === found)),
  about: aboutSeen,
  facts: {
    level: (found, { findings }) => {
      const taken = found.levelAboveOutlet
      if (!taken) return lacking(`the inspection did not read the level in ${the(found.label)}`)
      const pumped = findings?.record.lastPumpedOn ?? null
      const days = pumped && findings ? daysBetween(pumped, findings.record.inspectedOn) : null
      if (days !== null && days >= 0 && days <= REFILL_DAYS && taken.ft < 0) {
        return beside(
          `${the(found.label)} was pumped ${days} days before the inspection and may not have filled again`,
        )
      }
      const { length } = reading(taken, 'level', {
        of: found.label,
        findings: findings?.id ?? '',
        alone: () => true,
      })
      const words = `${taken.asWritten} ${taken.ft < 0 ? 'below' : 'above'} the outlet invert`
      return known(
        length,
        seen(found, findings?.id ?? '', `level in ${found.label}`, words, 'rule from the outlet invert'),
      )
    },
  },
  rules: { tolerance: { name: 'level.tolerance-in', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ level: height }, { tolerance }, found) {
    const inches = height.value * 12
    const U = expanded(height) * 12
    const limit = tolerance.value.amount
    const stands =
      Math.abs(inches) < 0.05
        ? 'at the outlet invert'
        : `${printLength(Math.abs(height.value))} ${inches > 0 ? 'above' : 'below'} the outlet invert`
    const because = `the liquid in ${the(found.label)} stands ${stands}`
    const steps = [
      {
        says: 'Level against the outlet invert',
        formula: '|h| − U > tolerance',
        numbers: `${printSignificant(Math.abs(inches), 3)} − ${printSignificant(U, 2)} > ${limit} in`,
        result:
          Math.abs(inches) - U > limit
            ? 'off the invert'
            : Math.abs(inches) + U <= limit
              ? 'at the invert'
              : 'near the invert',
      },
    ]
    if (Math.abs(inches) - U > limit) {
      return {
        verdict: 'differs',
        raises: inches > 0 ? 'level-high' : 'level-low',
        because,
        certainty: firm('beyond the tolerance and the expanded uncertainty together'),
        steps,
      }
    }
    if (Math.abs(inches) <= limit)
      return { verdict: 'agrees', raises: null, because, certainty: firm('within the tolerance'), steps }
    return {
      verdict: 'too-close-to-call',
      raises: null,
      because: `${because}: too close to the tolerance of ${limit} in to call`,
      certainty: open('within the expanded uncertainty of the tolerance'),
      steps,
    }
  },
})
