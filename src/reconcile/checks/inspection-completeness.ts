import { inForce } from '../../rules/in-force.ts'
import { firm } from '../about.ts'
import { check } from '../check.ts'
import { completeness, type ProtocolAnswer } from '../completeness.ts'
import { known } from '../fact.ts'

/**
 * An inspection that did not look is no evidence. Each thing that the protocol requires ends as done or left out; one that
 * an inspection can't do without makes it incomplete, until a reviewer waives it or somebody does it.
 */
export const inspectionCompleteness = check({
  id: 'inspection-completeness',
  raises: ['inspection-incomplete'],
  subjects: (given): readonly ProtocolAnswer[] => {
    const protocol = inForce(given.book, given.county, 'inspection.protocol', given.asBuilt.on)
    return protocol.state === 'in-force' ? completeness(given, protocol.value) : []
  },
  about: ({ part }) => part,
  facet: ({ item }) => item.id,
  facts: { answer: (answer) => known(answer) },
  rules: { protocol: { name: 'inspection.protocol', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ answer: { item, end, why } }) {
    const incomplete = end === 'left-out' && item.needed
    return {
      verdict: end === 'done' ? 'suffices' : incomplete ? 'falls-short' : 'cannot-tell',
      raises: incomplete ? 'inspection-incomplete' : null,
      reason: { is: 'protocol', step: item.step, needed: item.needed, end, why },
      certainty: firm('seen'),
    }
  },
})
