import type { FindingsRecord } from '../../records/findings.ts'
import { SYSTEM } from '../../records/part.ts'
import { firm } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { SIGNS, type Sign } from '../reason.ts'

/**
 * Signs that a system does not drain, whatever its sizes are: each that was looked for is asked, each that was
 * seen stands by itself. What nobody looked for is the protocol's to say.
 */
export const failureSigns = check({
  id: 'failure-signs',
  raises: ['failure-sign'],
  subjects: ({ findings }): readonly Sign[] =>
    findings ? SIGNS.filter((sign) => SEEN[sign](findings.record) !== null) : [],
  about: () => SYSTEM,
  facet: (sign) => sign,
  facts: {
    seen: (sign, { findings }) =>
      known(SEEN[sign](findings!.record) === true, {
        thing: 'sign',
        part: SYSTEM,
        word: 'found',
        asStated: null,
        used: { choice: SEEN[sign](findings!.record) ? sign : 'not-seen' },
        from: { kind: 'inspection', findings: findings!.id, component: null, how: 'seen' },
      }),
  },
  rules: {},
  decide: ({ seen }, _, sign) => ({
    verdict: seen ? 'falls-short' : 'suffices',
    raises: seen ? 'failure-sign' : null,
    reason: { is: 'sign', sign, seen },
    certainty: firm('seen'),
  }),
})

/** Whether a sign was seen; null where the inspection does not say. */
const SEEN: { readonly [S in Sign]: (record: FindingsRecord) => boolean | null } = {
  backup: ({ backup }) => backup,
  // A pipe that is no part of a system: its being there and in use is the failure.
  'pipe-to-open': ({ components }) =>
    components.some(({ kind, outcome }) => kind === 'straight-pipe' && outcome === 'found') ? true : null,
  discharge: ({ discharge }) => (discharge === null ? null : discharge !== 'none'),
  surfacing: ({ ground }) => (ground === null ? null : ground === 'surfacing'),
  dye: ({ dye }) => (dye === null || dye === 'no-dye' ? null : dye === 'seen'),
  'run-back': ({ runBack }) => runBack,
  'wet-ground': ({ ground }) => (ground === 'wet' ? true : null),
  'lush-ground': ({ ground }) => (ground === 'lush' ? true : null),
}
