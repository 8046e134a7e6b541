import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

const DEVICES = { pump: 'pumpWorks', alarm: 'alarmWorks' } as const
type Device = keyof typeof DEVICES
type Question = { readonly found: FoundComponent; readonly device: Device }

/** A pump that stands still floods the house or the ground; an alarm that is dead tells nobody. */
export const equipment = check({
  id: 'equipment',
  raises: ['equipment-failed'],
  subjects: ({ findings }): readonly Question[] =>
    (findings?.record.components ?? []).flatMap((found) =>
      (['pump', 'alarm'] as const)
        .filter((device) => (found[DEVICES[device]] ?? 'not-tested') !== 'not-tested')
        .map((device) => ({ found, device })),
    ),
  about: ({ found }, given) => aboutSeen(found, given),
  facet: ({ device }) => device,
  facts: {
    result: ({ found, device }, given) => {
      const result = found[DEVICES[device]]!
      return known(
        result,
        seen(found, aboutSeen(found, given), given.findings?.id ?? '', device, { choice: result }),
      )
    },
  },
  rules: {},
  decide: ({ result }, _, { device }) => ({
    verdict: result === 'works' ? 'suffices' : 'falls-short',
    raises: result === 'works' ? null : 'equipment-failed',
    reason: { is: 'equipment', device, result },
    certainty: firm('seen'),
  }),
})
