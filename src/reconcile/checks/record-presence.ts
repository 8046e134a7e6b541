import { SYSTEM } from '../../records/part.ts'
import { firm } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

export const recordPresence = check({
  id: 'record-presence',
  raises: ['record-absent', 'record-unclear'],
  subjects: () => ['system'],
  about: () => SYSTEM,
  facts: { asBuilt: (_, { asBuilt }) => known(asBuilt) },
  rules: {},
  decide({ asBuilt }) {
    const { permits, unapproved, on: by } = asBuilt
    if (permits.length > 0) {
      return {
        verdict: 'agrees',
        raises: null,
        reason: { is: 'permits-on-file', count: permits.length, by },
        certainty: firm('the-file'),
      }
    }
    if (unapproved.length > 0) {
      return {
        verdict: 'differs',
        raises: 'record-unclear',
        reason: { is: 'never-approved', permits: unapproved.map(({ number }) => number), by },
        certainty: firm('the-file'),
      }
    }
    return {
      verdict: 'differs',
      raises: 'record-absent',
      reason: { is: 'no-permit' },
      certainty: firm('the-file-may-grow'),
    }
  },
})
