import { isLine } from '../../records/component.ts'
import { isOrAre, the } from '../../records/naming.ts'
import { aboutPairing, firm, type SeenPairing, seen, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { claimFact, known, lacking } from '../fact.ts'
import { words } from './pipe.ts'

/** Everything but lines, which have a question of their own. */
export const material = check({
  id: 'material',
  question: 'Is it made of what the record says?',
  raises: ['material-differs'],
  subjects: ({ pairings }): readonly SeenPairing[] =>
    pairings.filter(wasSeen).filter(({ built }) => !isLine(built.kind)),
  about: aboutPairing,
  facts: {
    recorded: ({ built }) => claimFact(built.measures.material, `the material of ${the(built.label)}`, words),
    found: ({ found }, { findings }) =>
      found.material === null
        ? lacking(`the inspection does not say what ${the(found.label)} is made of`)
        : known(
            found.material,
            seen(
              found,
              findings?.id ?? '',
              `material of ${found.label}`,
              words(found.material),
              'seen by the inspector',
            ),
          ),
  },
  rules: {},
  decide: ({ recorded, found }, _, { built }) =>
    recorded === found
      ? {
          verdict: 'agrees',
          raises: null,
          because: `${the(built.label)} ${isOrAre(built.label)} of ${words(found)}, as recorded`,
          certainty: firm('seen by the inspector'),
        }
      : {
          verdict: 'differs',
          raises: 'material-differs',
          because: `${the(built.label)}: the record has ${words(recorded)}, the inspection found ${words(found)}`,
          certainty: firm('seen by the inspector'),
        },
})
