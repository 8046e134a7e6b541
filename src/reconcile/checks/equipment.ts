import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { DEVICES, type Device, RESULT } from '../devices.ts'
import { known } from '../fact.ts'

type Question = { readonly found: FoundComponent; readonly device: Device }

/**
 * A pump that stands still floods the house or the ground, an alarm that is dead tells nobody, bare wires beside water kill, and
 * effluent that nothing disinfects carries what it carries. What was taken out of service is asked nothing.
 */
export const equipment = check({
  id: 'equipment',
  raises: ['equipment-failed'],
  subjects: ({ findings, former }): readonly Question[] =>
    (findings?.record.components ?? [])
      .filter((found) => !former.some((old) => old.found === found))
      .flatMap((found) =>
        DEVICES.filter((device) => RESULT[device](found) !== null).map((device) => ({ found, device })),
      ),
  about: ({ found }, given) => aboutSeen(found, given),
  facet: ({ device }) => device,
  facts: {
    result: ({ found, device }, given) => {
      const result = RESULT[device](found)!
      const choice = device === 'wiring' ? (result === 'works' ? 'covered' : 'not-covered') : result
      return known(result, seen(found, aboutSeen(found, given), given.findings?.id ?? '', device, { choice }))
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
