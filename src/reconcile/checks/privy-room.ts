import { expanded, scale } from '../../measure/uncertain.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen, firm, open, sourceOf } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { reading } from '../facts/found-length.ts'
import { exactly, measured } from '../quantity.ts'

/** A privy has no inlet and no outlet: what counts is the room that is left over what stands in it. */
export const privyRoom = check({
  id: 'privy-room',
  raises: ['solids-high'],
  subjects: ({ findings, former }): readonly FoundComponent[] =>
    (findings?.record.components ?? []).filter(
      (found) =>
        found.kind === 'privy' &&
        found.outcome === 'found' &&
        (found.roomBelowTop ?? null) !== null &&
        !former.some((old) => old.found === found),
    ),
  about: aboutSeen,
  facts: {
    room: (found, given) => {
      const taking = {
        part: aboutSeen(found, given),
        of: found.label,
        findings: given.findings?.id ?? '',
        alone: () => true,
      }
      const { length, exhibits } = reading(found.roomBelowTop!, 'roomBelowTop', taking)
      return known(scale(length, 12), ...exhibits)
    },
  },
  rules: { least: { name: 'privy.least-room-in', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ room }, { least }) {
    const limit = least.value.amount
    const U = expanded(room)
    const short = room.value + U < limit
    const enough = room.value - U >= limit
    return {
      verdict: short ? 'falls-short' : enough ? 'suffices' : 'too-close-to-call',
      raises: short ? 'solids-high' : null,
      reason: {
        is: 'privy-room',
        room: measured(room, 'in'),
        least: exactly(limit, 'in'),
        source: sourceOf(least),
        comes: short ? 'short' : enough ? 'enough' : 'too-close',
      },
      certainty: short || enough ? firm('beyond-uncertainty') : open('within-uncertainty'),
    }
  },
})
