import { SYSTEM } from '../../records/part.ts'
import { firm } from '../about.ts'
import { BURDEN_SEEN, BURDENS_OF_FIELD, type FieldBurden } from '../burdens.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** What stands, drives, roots or drains over a drainfield: it crushes pipe, keeps air out and water in (common practice). */
export const fieldBurdens = check({
  id: 'field-burdens',
  raises: ['field-burdened'],
  subjects: ({ findings }: Case): readonly FieldBurden[] =>
    findings ? BURDENS_OF_FIELD.filter((it) => BURDEN_SEEN[it](findings.record) !== null) : [],
  about: () => SYSTEM,
  facet: (burden) => burden,
  facts: {
    seen: (burden, { findings }) => {
      const seen = BURDEN_SEEN[burden](findings!.record) === true
      return known(seen, {
        thing: 'burden',
        part: SYSTEM,
        word: 'found',
        asStated: null,
        used: { choice: seen ? burden : 'not-seen' },
        from: { kind: 'inspection', findings: findings!.id, component: null, how: 'seen' },
      })
    },
  },
  rules: {},
  decide: ({ seen }, _, burden) => ({
    verdict: seen ? 'falls-short' : 'suffices',
    raises: seen ? 'field-burdened' : null,
    reason: { is: 'burden', burden, seen },
    certainty: firm('seen'),
  }),
})
