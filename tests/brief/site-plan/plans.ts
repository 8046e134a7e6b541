import { type SitePlan, sitePlan } from '../../../src/brief/site-plan/plan.ts'
import { layOut } from '../../../src/reconcile/case.ts'
import { parcelOfTwelve } from '../../bench/parcel-of-twelve.ts'
import { book, inputOf, permit } from '../../reconcile/asked.ts'

const reference = { a: 'rear left corner', b: 'rear right corner', baseline: '30 ft', wall: 'rear' } as const
const tape = (a: string, b: string) => ({ a, b, sideWords: 'rear' })

const ofCard = permit(
  [
    { tag: 'tank', kind: 'tank', capacity: '1,000 gal', tie: tape('15 ft', '25 ft') },
    { tag: 'sewer', kind: 'building-sewer', material: 'cast-iron', pipeDiameter: '4 in' },
    { tag: 'outlet line', kind: 'effluent-line', material: 'vitrified-clay' },
    { tag: 'pit', kind: 'seepage-pit', diameter: '8 ft', tie: tape('40 ft', '45 ft') },
    { tag: 'well', kind: 'well', tie: tape('80 ft', '60 ft') },
  ],
  { reference },
)

/** A repair of 1994 that put a new outlet line in. */
const repair = permit(
  [{ tag: 'new line', kind: 'effluent-line', action: 'replace', replaces: ['outlet line'], material: 'pvc' }],
  { number: '94-7', kind: 'repair', issuedOn: '1994-04-01', approvedOn: '1994-05-01' },
)

const inspection = {
  reference: { ...reference, bearingDeg: 90 },
  components: [
    { key: '88-1/tank', label: 'tank', kind: 'tank', outcome: 'found', tie: tape('15 ft', '25 ft') },
    { key: '88-1/sewer', label: 'sewer', kind: 'building-sewer', outcome: 'found', material: 'pvc' },
    { key: '94-7/new line', label: 'new line', kind: 'effluent-line', outcome: 'found', material: 'pvc' },
    {
      key: '88-1/pit',
      label: 'the pool',
      kind: 'seepage-pit',
      outcome: 'found',
      tie: tape('45 ft', '45 ft'),
    },
    {
      label: 'second tank',
      kind: 'tank',
      outcome: 'found',
      fix: { lat: 41.50001, lon: -88.20002, radiusFt: 16, coverage: 0.95 },
    },
  ],
} as const

const planOf = (input: Parameters<typeof layOut>[0]): SitePlan => sitePlan(layOut(input))!

/** Plans that differ in what they have to show. */
export const PLANS = {
  full: () => planOf({ ...parcelOfTwelve, book }),
  card: () => planOf(inputOf([ofCard], null)),
  replaced: () => planOf(inputOf([ofCard, repair], inspection as never)),
  noSide: () =>
    planOf(
      inputOf(
        [permit([{ tag: 'pit', kind: 'seepage-pit', tie: { a: '30 ft', b: '25 ft' } }], { reference })],
        null,
      ),
    ),
  front: () =>
    planOf(
      inputOf(
        [
          permit([{ tag: 'tank', kind: 'tank', tie: { a: '20 ft', b: '25 ft', side: 'away' } }], {
            reference: { ...reference, wall: 'front' },
          }),
        ],
        null,
      ),
    ),
  crowded: () =>
    planOf(
      inputOf(
        [
          permit(
            Array.from({ length: 9 }, (_, at) => ({
              tag: `seepage pit number ${at + 1}`,
              kind: 'seepage-pit' as const,
              tie: tape(`${30 + at} ft`, '36 ft'),
            })),
            { reference },
          ),
        ],
        null,
      ),
    ),
} as const
