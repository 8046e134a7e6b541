import { isNonEmpty } from '../../base/non-empty.ts'
import { statedValue } from '../../records/claim.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, firm, type SeenPairing, seen, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { showChoice } from '../show.ts'

/** Kind (a bed where the record has trenches), shape, number of compartments, number of units. */
export const typeOfComponent = check({
  id: 'type-of-component',
  raises: ['type-differs'],
  subjects: ({ pairings }): readonly SeenPairing[] => pairings.filter(wasSeen),
  about: aboutPairing,
  facts: {
    found: ({ built, found }, { findings }) =>
      known(found, seen(found, partOnRecord(built), findings?.id ?? '', 'kind', showChoice(found.kind))),
  },
  rules: {},
  decide({ found }, _, { built }) {
    const pairs = [
      { fact: 'kind', recorded: built.kind, found: found.kind },
      { fact: 'shape', recorded: statedValue(built.measures.shape), found: found.shape },
      { fact: 'compartments', recorded: statedValue(built.measures.compartments), found: found.compartments },
      { fact: 'count', recorded: statedValue(built.measures.count), found: found.count },
    ] as const
    const compared = pairs.flatMap((it) =>
      it.recorded === null || it.found === null
        ? []
        : [{ fact: it.fact, recorded: it.recorded, found: it.found }],
    )
    const facts = compared.filter((it) => it.recorded !== it.found)
    return isNonEmpty(facts)
      ? {
          verdict: 'differs',
          raises: 'type-differs',
          reason: { is: 'other-type', facts },
          certainty: firm('seen'),
        }
      : {
          verdict: 'agrees',
          raises: null,
          reason: { is: 'same-type', facts: compared.map(({ fact }) => fact) },
          certainty: firm('seen'),
        }
  },
})
