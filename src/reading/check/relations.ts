import type { ComponentKind } from '../../catalog/kinds.ts'
import type { EntryDraft } from '../proposal.ts'
import { type Relation, range, relation } from './relation.ts'

/** 1,728 in³/ft³ over 231 in³/gal. */
const GAL_PER_CU_FT = 1728 / 231
/** A tank built to a state's own table computes 2 % under to 11 % over its nominal size (12VAC5-610-815 Table 5.3). */
const LEAST_OF_NOMINAL = 0.85
const MOST_OF_NOMINAL = 1.25
/** A day before any septic permit (1930) and one after any that is read here, in days since 1900. */
const FIRST_DAY = 10_957
const LAST_DAY = 54_786

/** What must hold on a paper, for the components that it has. The ranges are common practice of the trade. */
export function relationsFor(entry: EntryDraft): readonly Relation[] {
  return [
    relation(
      'date-order',
      ['/issuedOn', '/approvedOn'],
      'the final approval comes before the permit was issued',
      (issued, approved) => approved >= issued,
    ),
    relation(
      'date-order',
      ['/issuedOn', '/approvedOn'],
      'the final approval comes more than ten years after the permit',
      (issued, approved) => approved - issued < 3653,
    ),
    range('/issuedOn', FIRST_DAY, LAST_DAY, 'no septic permit is of that year'),
    range('/approvedOn', FIRST_DAY, LAST_DAY, 'no septic permit is of that year'),
    range('/bedrooms', 1, 12, 'houses have one to twelve bedrooms'),
    range('/designFlowGpd', 75, 10_000, 'a house is designed for 75 to some thousand gallons a day'),
    range('/percRateMpi', 0.5, 240, 'percolation rates run from under one to 240 minutes an inch'),
    relation(
      'arithmetic',
      ['/bedrooms', '/designFlowGpd'],
      'the flow is not 60 to 300 gallons a day for each bedroom',
      (bedrooms, flow) => flow / bedrooms >= 60 && flow / bedrooms <= 300,
    ),
    range('/reference/baseline', 6, 150, 'a wall of a house is 6 to 150 ft long'),
    ...entry.components.flatMap(({ kind }, index) => componentRelations(kind, `/components/${index}`)),
  ]
}

function componentRelations(kind: ComponentKind, at: string): Relation[] {
  const p = (name: string): string => `${at}/${name}`
  const ties: Relation[] = [
    range(p('tie/a'), 1, 400, 'a tie is 1 to 400 ft'),
    range(p('tie/b'), 1, 400, 'a tie is 1 to 400 ft'),
    relation(
      'arithmetic',
      [p('tie/a'), p('tie/b'), '/reference/baseline'],
      'the two ties and the distance between the corners make no triangle',
      (a, b, baseline) => a + b >= baseline * 0.985 && Math.abs(a - b) <= baseline * 1.015,
    ),
  ]
  switch (kind) {
    case 'tank':
    case 'pump-chamber':
      return [
        range(p('capacity'), 100, 10_000, 'tanks of houses hold 100 to 10,000 gallons'),
        range(p('length'), 2.5, 20, 'tanks are 2.5 to 20 ft long'),
        range(p('width'), 2, 12, 'tanks are 2 to 12 ft wide'),
        range(p('liquidDepth'), 2, 9, 'tanks are 2 to 9 ft deep in liquid'),
        range(p('diameter'), 2.5, 14, 'round tanks are 2.5 to 14 ft across'),
        range(p('wallThickness'), 0.01, 1.1, 'walls of tanks are up to 13 in thick'),
        range(p('depthToTop'), 0, 12, 'tanks lie up to 12 ft deep'),
        range(p('compartments'), 1, 4, 'tanks have one to four compartments'),
        relation(
          'arithmetic',
          [p('length'), p('width')],
          'the tank is wider than long',
          (length, width) => width <= length * 1.02,
        ),
        relation(
          'arithmetic',
          [p('liquidDepth'), p('insideHeight')],
          'the liquid is deeper than the tank is high',
          (depth, height) => depth <= height,
        ),
        relation(
          'arithmetic',
          [p('capacity'), p('length'), p('width'), p('liquidDepth')],
          'length by width by liquid depth does not give the capacity',
          (capacity, l, w, d) => fits(l * w * d * GAL_PER_CU_FT, capacity),
        ),
        relation(
          'arithmetic',
          [p('capacity'), p('diameter'), p('liquidDepth')],
          'diameter and liquid depth do not give the capacity',
          (capacity, d, h) => fits((Math.PI / 4) * d * d * h * GAL_PER_CU_FT, capacity),
        ),
        ...ties,
      ]
    case 'seepage-pit':
    case 'cesspool':
      return [
        range(p('count'), 1, 12, 'a house has one to twelve pits'),
        range(p('diameter'), 2, 16, 'pits are 2 to 16 ft across'),
        range(p('effectiveDepth'), 2, 40, 'pits are 2 to 40 ft deep below the inlet'),
        relation(
          'arithmetic',
          [p('area'), p('count'), p('diameter'), p('effectiveDepth')],
          'the sidewall of the pits is not the stated area',
          (area, n, d, h) => near(n * Math.PI * d * h, area, 0.15),
        ),
        ...ties,
      ]
    case 'trench':
    case 'bed':
    case 'chambers':
      return [
        range(p('count'), 1, 20, 'a field has one to twenty lines'),
        range(p('length'), 5, 400, 'lines are 5 to 400 ft long'),
        range(
          p('width'),
          kind === 'bed' ? 3 : 0.5,
          kind === 'bed' ? 100 : 6,
          kind === 'bed' ? 'beds are 3 to 100 ft wide' : 'trenches are 6 in to 6 ft wide',
        ),
        range(p('effectiveDepth'), 0.2, 6, 'the gravel below a pipe is 2 in to 6 ft deep'),
        relation(
          'arithmetic',
          [p('area'), p('count'), p('length'), p('width')],
          'lines by length by width is not the stated area',
          (area, n, l, w) => near(n * l * w, area, 0.1),
        ),
        relation(
          'arithmetic',
          [p('area'), p('rate'), '/designFlowGpd'],
          'the area at the stated rate does not take the flow',
          (area, rate, flow) => area * rate >= flow * 0.95,
        ),
        ...ties,
      ]
    case 'building-sewer':
    case 'effluent-line':
      return [
        range(p('pipeDiameter'), 0.1, 1.01, 'house pipes are 1.25 to 12 in across'),
        range(p('length'), 1, 600, 'house pipes are 1 to 600 ft long'),
      ]
    default:
      return ties
  }
}

const fits = (computed: number, capacity: number): boolean =>
  computed >= capacity * LEAST_OF_NOMINAL && computed <= capacity * MOST_OF_NOMINAL

const near = (computed: number, stated: number, share: number): boolean =>
  Math.abs(computed - stated) <= share * stated
