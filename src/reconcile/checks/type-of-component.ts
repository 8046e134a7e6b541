import { statedValue } from '../../records/claim.ts'
import { the } from '../../records/naming.ts'
import { aboutPairing, firm, type SeenPairing, seen, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { words } from './pipe.ts'

/** Kind (a bed where the record has trenches), shape, number of compartments, number of units. */
export const typeOfComponent = check({
  id: 'type-of-component',
  question: 'Is it the kind of thing the record says?',
  raises: ['type-differs'],
  subjects: ({ pairings }): readonly SeenPairing[] => pairings.filter(wasSeen),
  about: aboutPairing,
  facts: {
    found: ({ found }, { findings }) =>
      known(
        found,
        seen(found, findings?.id ?? '', `type of ${found.label}`, words(found.kind), 'seen by the inspector'),
      ),
  },
  rules: {},
  decide({ found }, _, { built }) {
    const pairs = [
      ['kind', built.kind, found.kind],
      ['shape', statedValue(built.measures.shape), found.shape],
      ['compartments', statedValue(built.measures.compartments), found.compartments],
      ['number alike', statedValue(built.measures.count), found.count],
    ] as const
    const compared = pairs.filter(([, recorded, seenNow]) => recorded !== null && seenNow !== null)
    const differing = compared.filter(([, recorded, seenNow]) => recorded !== seenNow)
    if (differing.length === 0) {
      return {
        verdict: 'agrees',
        raises: null,
        because: `record and inspection agree on ${the(built.label)} in ${compared.map(([name]) => name).join(', ')}`,
        certainty: firm('seen by the inspector'),
      }
    }
    const says = differing.map(
      ([name, recorded, seenNow]) =>
        `${name}: ${words(String(recorded))} on record, ${words(String(seenNow))} found`,
    )
    return {
      verdict: 'differs',
      raises: 'type-differs',
      because: `record and inspection differ on ${the(built.label)} in ${says.join('; ')}`,
      certainty: firm('seen by the inspector'),
    }
  },
})
