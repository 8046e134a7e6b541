import { daysBetween } from '../../base/plain-date.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { expanded } from '../../measure/uncertain.ts'
import { isVessel } from '../../records/component.ts'
import { aboutSeen, firm, open, seen } from '../about.ts'
import { check } from '../check.ts'
import { beside, known, lacking } from '../fact.ts'
import { reading } from '../facts/found-length.ts'
import { exactly } from '../quantity.ts'

/** A tank pumped so lately may not have filled again: a low level then says nothing (common practice). */
const REFILL_DAYS = 14

/** The level is a finding of its own and changes no capacity: above the outlet it backs up, below it leaks or is empty. */
export const level = check({
  id: 'level',
  raises: ['level-high', 'level-low'],
  subjects: ({ findings, former }) =>
    (findings?.record.components ?? [])
      .filter(({ kind, outcome }) => kind !== 'pump-chamber' && isVessel(kind) && outcome === 'found')
      .filter((found) => !former.some((old) => old.found === found)),
  about: aboutSeen,
  facts: {
    level: (found, given) => {
      const part = aboutSeen(found, given)
      const { findings } = given
      const taken = found.levelAboveOutlet
      if (!taken) return lacking({ gap: 'not-measured', things: ['level'], part })
      const pumped = findings?.record.lastPumpedOn ?? null
      const days = pumped && findings ? daysBetween(pumped, findings.record.inspectedOn) : null
      if (days !== null && days >= 0 && days <= REFILL_DAYS && taken.ft < 0)
        return beside({ aside: 'just-pumped', part, days })
      const { length } = reading(taken, 'level', {
        part,
        of: found.label,
        findings: findings?.id ?? '',
        alone: () => true,
      })
      return known(
        length,
        seen(
          found,
          part,
          findings?.id ?? '',
          'level',
          exactly(taken.ft, 'ft'),
          taken.method,
          taken.asWritten,
        ),
      )
    },
  },
  rules: { tolerance: { name: 'level.tolerance-in', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ level: height }, { tolerance }) {
    const inches = height.value * 12
    const U = expanded(height) * 12
    const limit = tolerance.value.amount
    const off = Math.abs(inches) - U > limit
    const comes = off ? (inches > 0 ? 'high' : 'low') : Math.abs(inches) <= limit ? 'at' : 'near'
    const steps = [
      {
        says: 'Level against the outlet invert',
        formula: '|h| − U > tolerance',
        numbers: `${printSignificant(Math.abs(inches), 3)} − ${printSignificant(U, 2)} > ${limit} in`,
        result: off ? 'off the invert' : Math.abs(inches) + U <= limit ? 'at the invert' : 'near the invert',
      },
    ]
    const reason = {
      is: 'level',
      height: { value: height.value, unit: 'ft', U: expanded(height) },
      tolerance: exactly(limit, 'in'),
      comes,
    } as const
    switch (comes) {
      case 'high':
      case 'low':
        return {
          verdict: 'differs',
          raises: comes === 'high' ? 'level-high' : 'level-low',
          reason,
          certainty: firm('beyond-tolerance'),
          steps,
        }
      case 'at':
        return { verdict: 'agrees', raises: null, reason, certainty: firm('within-tolerance'), steps }
      case 'near':
        return {
          verdict: 'too-close-to-call',
          raises: null,
          reason,
          certainty: open('within-uncertainty'),
          steps,
        }
    }
  },
})
