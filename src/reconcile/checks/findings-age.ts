import { unread } from '../../rules/citation.ts'
import { countsUntil } from '../../rules/work/transfer-window.ts'
import { firm, required, SYSTEM } from '../about.ts'
import { check } from '../check.ts'
import { known, lacking } from '../fact.ts'

/** A visit goes stale when its window for a transfer has run out, or when work was approved after it. */
export const findingsAge = check({
  id: 'findings-age',
  question: 'Does the visit still describe what is there?',
  raises: ['findings-stale'],
  subjects: ({ findings }) => (findings ? ['system'] : []),
  about: () => SYSTEM,
  facts: { findings: (_, { findings }) => (findings ? known(findings) : lacking('no visit')) },
  rules: { window: { name: 'transfer.inspection-window-days', on: (_, { asOf }) => asOf, optional: true } },
  decide({ findings }, { window }, _, { asOf, permits }) {
    const { visitedOn } = findings.record
    const since = permits.filter(
      ({ record }) =>
        record.approvedOn !== null && record.approvedOn > visitedOn && record.approvedOn <= asOf,
    )
    if (since.length > 0) {
      const numbers = since.map(({ record }) => `${record.number} (approved ${record.approvedOn})`).join(', ')
      return {
        verdict: 'differs',
        raises: 'findings-stale',
        because: `work was approved after the visit of ${visitedOn}: permit ${numbers}`,
        certainty: firm('by the dates'),
      }
    }
    const until = window ? countsUntil(window.value, visitedOn) : null
    const exhibits = window && until !== null ? [required('counts for a transfer until', until, window)] : []
    const basis = window ? unread(window) : ''
    if (until !== null && asOf > until) {
      return {
        verdict: 'differs',
        raises: 'findings-stale',
        because: `the visit was on ${visitedOn} and counts for a transfer until ${until}; today is ${asOf}${basis}`,
        certainty: firm('by the dates'),
        exhibits,
      }
    }
    return {
      verdict: 'agrees',
      raises: null,
      because:
        until === null
          ? `the visit was on ${visitedOn}`
          : `the visit of ${visitedOn} counts for a transfer until ${until}${basis}`,
      certainty: firm('by the dates'),
      exhibits,
    }
  },
})
