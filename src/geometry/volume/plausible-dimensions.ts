import { err, ok, type Result } from '../../base/result.ts'
import { printGal } from '../../measure/print/gallons.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { galToCuFt } from '../../measure/units.ts'

/** From one to the other; both the same where a source gives one figure. */
export type Span = { readonly from: number; readonly to: number }

/** A way that a source ties inside dimensions to a nominal size. */
export type DimensionRule = {
  readonly name: string
  readonly source: string
  readonly status: 'read' | 'second-hand' | 'from-memory' | 'common-practice'
} & (
  | {
      /** Length to width between two ratios, width equal to depth unless the depth's own limits forbid. */
      readonly by: 'ratio'
      readonly lengthToWidth: Span
      readonly liquidDepthFt: Span
    }
  | {
      readonly by: 'table'
      readonly rows: readonly {
        readonly gal: number
        readonly lengthFt: number
        readonly widthFt: number
        readonly liquidDepthFt: number
      }[]
    }
)

/**
 * Virginia 12VAC5-610-815 states a ratio and prints a table, and its table departs from its own ratio (7 × 3.5 × 4 ft
 * is 2 : 1.14 : 1, and its dimensions compute to −2 % … +6 % of the size beside them). Both stand, each under its name.
 */
export const DIMENSION_RULES: readonly DimensionRule[] = [
  {
    name: 'Virginia ratio',
    source: '12VAC5-610-815: length to depth to width 2:1:1 to 3:1:1, liquid depth 4 to 8 ft',
    status: 'read',
    by: 'ratio',
    lengthToWidth: { from: 2, to: 3 },
    liquidDepthFt: { from: 4, to: 8 },
  },
  {
    name: 'Virginia Table 5.3',
    source: '12VAC5-610-815 Table 5.3, typical inside dimensions',
    status: 'read',
    by: 'table',
    rows: [
      { gal: 750, lengthFt: 7, widthFt: 3.5, liquidDepthFt: 4 },
      { gal: 900, lengthFt: 8, widthFt: 4, liquidDepthFt: 4 },
      { gal: 1200, lengthFt: 9, widthFt: 4.5, liquidDepthFt: 4 },
    ],
  },
]

/** Inside dimensions a rectangular tank of a nominal size may be expected to have, ft, and on whose word. */
export type PlausibleDimensions = {
  readonly lengthFt: Span
  readonly widthFt: Span
  readonly liquidDepthFt: Span
  readonly rule: DimensionRule
}

/**
 * What to expect inside a rectangular tank sold as `nominalGal`: one answer for each rule that has one, never averaged.
 * An expectation for finding the tank and bringing the right rule, and no record of what was built.
 */
export function plausibleDimensions(
  nominalGal: number,
  rules: readonly DimensionRule[] = DIMENSION_RULES,
): Result<Worked<readonly PlausibleDimensions[]>, string> {
  if (!(nominalGal > 0 && Number.isFinite(nominalGal)))
    return err(`A nominal capacity of ${nominalGal} gal has no dimensions: it must be more than zero.`)
  const answers = rules.flatMap((rule) => {
    const dimensions = rule.by === 'ratio' ? byRatio(nominalGal, rule) : byTable(nominalGal, rule)
    return dimensions ? [{ ...dimensions, rule }] : []
  })
  return ok(worked(answers, () => answers.map((answer) => step(nominalGal, answer))))
}

type Dimensions = Omit<PlausibleDimensions, 'rule'>
type RatioRule = Extract<DimensionRule, { by: 'ratio' }>
type TableRule = Extract<DimensionRule, { by: 'table' }>

/**
 * With W = D = x and L = r·x, V = r·x³, so x = ∛(V/r). Where x lies outside the depth's limits the depth is the limit
 * D and the plan keeps its ratio: W = √(V/(D·r)).
 */
function byRatio(nominalGal: number, { lengthToWidth, liquidDepthFt }: RatioRule): Dimensions {
  const cuFt = galToCuFt(nominalGal)
  const at = (r: number) => {
    const x = Math.cbrt(cuFt / r)
    const depth = Math.min(Math.max(x, liquidDepthFt.from), liquidDepthFt.to)
    const width = depth === x ? x : Math.sqrt(cuFt / (depth * r))
    return { length: r * width, width, depth }
  }
  const [short, long] = [at(lengthToWidth.from), at(lengthToWidth.to)]
  return {
    lengthFt: span(short.length, long.length),
    widthFt: span(short.width, long.width),
    liquidDepthFt: span(short.depth, long.depth),
  }
}

/** The row of that size; between two rows, from the one to the other; outside the table, nothing. */
function byTable(nominalGal: number, { rows }: TableRule): Dimensions | undefined {
  const below = rows.findLast((row) => row.gal <= nominalGal)
  const above = rows.find((row) => row.gal >= nominalGal)
  if (!below || !above) return undefined
  return {
    lengthFt: span(below.lengthFt, above.lengthFt),
    widthFt: span(below.widthFt, above.widthFt),
    liquidDepthFt: span(below.liquidDepthFt, above.liquidDepthFt),
  }
}

const span = (a: number, b: number): Span => ({ from: Math.min(a, b), to: Math.max(a, b) })

function step(nominalGal: number, { lengthFt, widthFt, liquidDepthFt, rule }: PlausibleDimensions): Step {
  const between = ({ from, to }: Span) =>
    n(from, 3) === n(to, 3) ? n(from, 3) : `${n(from, 3)} to ${n(to, 3)}`
  return {
    says: `Expected inside, by ${rule.source}`,
    formula:
      rule.by === 'ratio'
        ? 'L × W × D = V, in the ratio and within the depth’s limits'
        : 'the table’s rows around it',
    numbers: `${printGal(nominalGal)} = ${n(galToCuFt(nominalGal))} cu ft`,
    result: `${between(lengthFt)} ft long, ${between(widthFt)} ft wide, ${between(liquidDepthFt)} ft of liquid`,
  }
}
