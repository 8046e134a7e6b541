import { SYSTEM } from '../../records/part.ts'
import { firm } from '../about.ts'
import { check } from '../check.ts'
import { bedroomsCounted, bedroomsOnRecord } from '../facts/household.ts'

export const bedrooms = check({
  id: 'bedrooms',
  raises: ['bedrooms-above-design'],
  subjects: ({ findings }) => (findings ? ['system'] : []),
  about: () => SYSTEM,
  facts: { designed: (_, given) => bedroomsOnRecord(given), counted: (_, given) => bedroomsCounted(given) },
  rules: {},
  decide: ({ designed, counted }) => ({
    verdict: counted > designed ? 'falls-short' : 'suffices',
    raises: counted > designed ? 'bedrooms-above-design' : null,
    reason: { is: 'bedrooms', designed, counted },
    certainty: firm('counted'),
  }),
})
