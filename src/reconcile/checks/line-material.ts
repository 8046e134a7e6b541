import { statedValue } from '../../records/claim.ts'
import { isLine } from '../../records/component.ts'
import { isOrAre, the } from '../../records/naming.ts'
import { aboutPairing, firm, type SeenPairing, seen, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { claimFact, known, lacking } from '../fact.ts'
import { sizeDiffers, words } from './pipe.ts'

/**
 * Pipe of another material or size than the record's means that the line was replaced. Where a later approved permit
 * put the new line in, it is history; where none did, it is a replacement with no permit on file.
 */
export const lineMaterial = check({
  id: 'line-material',
  question: 'Is the line the one on record?',
  raises: ['line-replaced', 'line-replaced-without-permit'],
  subjects: ({ pairings }): readonly SeenPairing[] =>
    pairings.filter(wasSeen).filter(({ built }) => isLine(built.kind)),
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
              howSeen(found.cameraRun !== null),
            ),
          ),
  },
  rules: {},
  decide({ recorded, found }, _, { built, found: line }, { asBuilt }) {
    const size = sizeDiffers(built, line)
    if (recorded !== found || size) {
      const changes = [
        recorded === found ? null : `the record has ${words(recorded)}, the inspection found ${words(found)}`,
        size,
      ].filter((change) => change !== null)
      return {
        verdict: 'differs',
        raises: 'line-replaced-without-permit',
        because: `${the(built.label)}: ${changes.join('; ')}; no approved permit shows the change`,
        certainty: firm('pipe does not change its material or size: it was replaced'),
      }
    }
    const former = asBuilt.components.find(({ replacedBy }) => replacedBy === built.key)
    const before = former ? statedValue(former.measures.material) : null
    if (former && before && before !== found) {
      const permit = built.events[0].permit
      return {
        verdict: 'agrees',
        raises: 'line-replaced',
        because: `${the(former.label)} of ${words(before)} was replaced by ${words(found)} under permit ${permit.number}, approved ${permit.approvedOn}; the inspection found it so`,
        certainty: firm('the later permit and the inspection agree'),
      }
    }
    return {
      verdict: 'agrees',
      raises: null,
      because: `${the(built.label)} ${isOrAre(built.label)} of ${words(found)}, as recorded`,
      certainty: firm('seen by the inspector'),
    }
  },
})

const howSeen = (byCamera: boolean): string => (byCamera ? 'seen by camera' : 'seen by the inspector')
