import { unread } from '../../rules/citation.ts'
import { countsUntil } from '../../rules/work/transfer-window.ts'
import { firm, required, SYSTEM } from '../about.ts'
import { check } from '../check.ts'
import { known, lacking } from '../fact.ts'

/** An inspection goes stale when its window for a transfer has run out, or when work was approved after it. */
export const findingsAge = check({
  id: 'findings-age',
  question: 'Does the inspection still describe what is there?',
  raises: ['findings-stale'],
  subjects: ({ findings }) => (findings ? ['system'] : []),
  about: () => SYSTEM,
  facts: { findings: (_, { findings }) => (findings ? known(findings) : lacking('no inspection')) },
  rules: { window: { name: 'transfer.inspection-window-days', on: (_, { asOf }) => asOf, optional: true } },
  decide({ findings }, { window }, _, { asOf, permits }) {
    const { inspectedOn } = findings.record
    const since = permits.filter(
      ({ record }) =>
        record.approvedOn !== null && record.approvedOn > inspectedOn && record.approvedOn <= asOf,
    )
    if (since.length > 0) {
      const numbers = since.map(({ record }) => `${record.number} (approved ${record.approvedOn})`).join(', ')
      return {
        verdict: 'differs',
        raises: 'findings-stale',
        because: `work was approved after the inspection of ${inspectedOn}: permit ${numbers}`,
        certainty: firm('by the dates'),
      }
    }
    const until = window ? countsUntil(window.value, inspectedOn) : null
    const exhibits = window && until !== null ? [required('counts for a transfer until', until, window)] : []
    const basis = window ? unread(window) : ''
    if (until !== null && asOf > until) {
      return {
        verdict: 'differs',
        raises: 'findings-stale',
        because: `the inspection was on ${inspectedOn} and counts for a transfer until ${until}; today is ${asOf}${basis}`,
        certainty: firm('by the dates'),
        exhibits,
      }
    }
    return {
      verdict: 'agrees',
      raises: null,
      because:
        until === null
          ? `the inspection was on ${inspectedOn}`
          : `the inspection of ${inspectedOn} counts for a transfer until ${until}${basis}`,
      certainty: firm('by the dates'),
      exhibits,
    }
  },
})
