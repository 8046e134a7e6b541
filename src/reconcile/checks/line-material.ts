import { isLine } from '../../catalog/kinds.ts'
import { statedValue } from '../../records/claim.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, firm, type SeenPairing, seen, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { claimFact, known, lacking } from '../fact.ts'
import { showChoice } from '../show.ts'
import { isTold } from './line-stretches.ts'
import { sizeDiffers } from './pipe.ts'

/**
 * Pipe of another material or size than the record's means that the line was replaced. Where a later approved permit
 * put the new line in, it is history; where none did, it is a replacement with no permit on file. A line told in stretches
 * has a question of its own.
 */
export const lineMaterial = check({
  id: 'line-material',
  raises: ['line-replaced', 'line-replaced-without-permit'],
  subjects: ({ pairings }): readonly SeenPairing[] =>
    pairings.filter(wasSeen).filter((it) => isLine(it.built.kind) && !isTold(it)),
  about: aboutPairing,
  facts: {
    recorded: ({ built }) => claimFact(built.measures.material, 'material', partOnRecord(built), showChoice),
    found: ({ built, found }, { findings }) => {
      const part = partOnRecord(built)
      if (found.material === null) return lacking({ gap: 'not-measured', things: ['material'], part })
      const how = found.cameraRun === null ? 'seen' : 'by-camera'
      return known(
        found.material,
        seen(found, part, findings?.id ?? '', 'material', showChoice(found.material), how),
      )
    },
  },
  rules: {},
  decide({ recorded, found }, _, { built, found: line }, { asBuilt }) {
    const size = sizeDiffers(built, line)
    if (recorded !== found || size) {
      return {
        verdict: 'differs',
        raises: 'line-replaced-without-permit',
        reason: { is: 'other-pipe', material: recorded === found ? null : { recorded, found }, size },
        certainty: firm('replaced-not-changed'),
      }
    }
    const former = asBuilt.components.find(({ replacedBy }) => replacedBy === built.key)
    const before = former ? statedValue(former.measures.material) : null
    if (former && before && before !== found) {
      const { number: permit, approvedOn } = built.events[0].permit
      return {
        verdict: 'agrees',
        raises: 'line-replaced',
        reason: {
          is: 'replaced-under-permit',
          former: partOnRecord(former),
          from: before,
          to: found,
          permit,
          approvedOn,
        },
        certainty: firm('permit-and-inspection'),
      }
    }
    return {
      verdict: 'agrees',
      raises: null,
      reason: { is: 'same-material', material: found },
      certainty: firm('seen'),
    }
  },
})
