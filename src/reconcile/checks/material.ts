import { isLine } from '../../catalog/kinds.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, firm, type SeenPairing, seen, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { claimFact, known, lacking } from '../fact.ts'
import { showChoice } from '../show.ts'

/** Everything but lines, which have a question of their own. */
export const material = check({
  id: 'material',
  raises: ['material-differs'],
  subjects: ({ pairings }): readonly SeenPairing[] =>
    pairings.filter(wasSeen).filter(({ built }) => !isLine(built.kind)),
  about: aboutPairing,
  facts: {
    recorded: ({ built }) => claimFact(built.measures.material, 'material', partOnRecord(built), showChoice),
    found: ({ built, found }, { findings }) => {
      const part = partOnRecord(built)
      return found.material === null
        ? lacking({ gap: 'not-measured', things: ['material'], part })
        : known(found.material, seen(found, part, findings?.id ?? '', 'material', showChoice(found.material)))
    },
  },
  rules: {},
  decide: ({ recorded, found }) =>
    recorded === found
      ? {
          verdict: 'agrees',
          raises: null,
          reason: { is: 'same-material', material: found },
          certainty: firm('seen'),
        }
      : {
          verdict: 'differs',
          raises: 'material-differs',
          reason: { is: 'other-material', recorded, found },
          certainty: firm('seen'),
        },
})
