import { firm, SYSTEM } from '../about.ts'
import { check } from '../check.ts'
import { bedroomsCounted, bedroomsOnRecord } from '../facts/household.ts'

export const bedrooms = check({
  id: 'bedrooms',
  question: 'Are there more bedrooms than the system was designed for?',
  raises: ['bedrooms-above-design'],
  subjects: ({ findings }) => (findings ? ['system'] : []),
  about: () => SYSTEM,
  facts: { designed: (_, given) => bedroomsOnRecord(given), counted: (_, given) => bedroomsCounted(given) },
  rules: {},
  decide: ({ designed, counted }) =>
    counted > designed
      ? {
          verdict: 'falls-short',
          raises: 'bedrooms-above-design',
          because: `designed for ${designed} bedrooms; the inspection counted ${counted}`,
          certainty: firm('both are counts'),
        }
      : {
          verdict: 'suffices',
          raises: null,
          because: `designed for ${designed} bedrooms; the inspection counted ${counted}`,
          certainty: firm('both are counts'),
        },
})
