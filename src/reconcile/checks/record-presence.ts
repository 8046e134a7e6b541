import { firm, SYSTEM } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

export const recordPresence = check({
  id: 'record-presence',
  question: 'Is there an approved permit on file?',
  raises: ['record-absent', 'record-unclear'],
  subjects: () => ['system'],
  about: () => SYSTEM,
  facts: { asBuilt: (_, { asBuilt }) => known(asBuilt) },
  rules: {},
  decide({ asBuilt }) {
    const { permits, unapproved, on } = asBuilt
    if (permits.length > 0) {
      return {
        verdict: 'agrees',
        raises: null,
        because: `${permits.length === 1 ? 'one approved permit' : `${permits.length} approved permits`} on file by ${on}`,
        certainty: firm('the file itself'),
      }
    }
    if (unapproved.length > 0) {
      const numbers = unapproved.map(({ number }) => number).join(', ')
      return {
        verdict: 'differs',
        raises: 'record-unclear',
        because: `permit ${numbers} is on file without a final approval by ${on}: it does not show that anything was built`,
        certainty: firm('the file itself'),
      }
    }
    return {
      verdict: 'differs',
      raises: 'record-absent',
      because: 'no permit for a septic system is on file for this parcel',
      certainty: firm('the file as it stands: paper may still turn up'),
    }
  },
})
