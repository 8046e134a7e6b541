import { expanded } from '../../measure/uncertain.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen, firm, open, seen } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known, lacking } from '../fact.ts'
import { reading } from '../facts/found-length.ts'
import { exactly, measured } from '../quantity.ts'

/** Water was run in and a level read again: over its invert after the test, beyond the tolerance, the part does not take it. */
export const flowTest = check({
  id: 'flow-test',
  raises: ['level-high'],
  subjects: ({ findings, former }: Case): readonly FoundComponent[] =>
    (findings?.record.components ?? []).filter(
      (found) =>
        found.outcome === 'found' &&
        (found.levelAfterTest ?? null) !== null &&
        !former.some((old) => old.found === found),
    ),
  about: aboutSeen,
  facet: () => 'after the test',
  facts: {
    after: (found, given) => {
      const part = aboutSeen(found, given)
      const findings = given.findings?.id ?? ''
      const taken = found.levelAfterTest!
      const { length } = reading(taken, 'level', { part, of: found.label, findings, alone: () => true })
      return known(
        length,
        seen(found, part, findings, 'level', exactly(taken.ft, 'ft'), taken.method, taken.asWritten),
      )
    },
    volume: (found, given) => {
      const volume = given.findings?.record.testVolume ?? null
      return volume === null
        ? lacking({ gap: 'not-measured', things: ['testVolume'], part: aboutSeen(found, given) })
        : known(volume.gal)
    },
  },
  rules: { tolerance: { name: 'level.tolerance-in', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ after, volume }, { tolerance }, found, { findings }) {
    const [inches, U, limit] = [after.value * 12, expanded(after) * 12, tolerance.value.amount]
    const high = inches - U > limit
    const near = !high && inches > limit
    const before = found.levelAboveOutlet ?? found.levelAboveInlet
    return {
      verdict: high ? 'falls-short' : near ? 'too-close-to-call' : 'suffices',
      raises: high ? 'level-high' : null,
      reason: {
        is: 'flow-test',
        volume: exactly(volume, 'gal'),
        minutes: findings?.record.testMinutes ?? null,
        before: before === null ? null : exactly(before.ft, 'ft'),
        after: measured(after, 'ft'),
        takes: !high,
      },
      certainty: near ? open('within-uncertainty') : firm('beyond-uncertainty'),
    }
  },
})
