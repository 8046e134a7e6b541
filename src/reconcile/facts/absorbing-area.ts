import { isAbsorption } from '../../catalog/kinds.ts'
import { absorptionArea } from '../../geometry/absorption/absorption-area.ts'
import { surfaceThatCounts } from '../../geometry/absorption/absorption-shape.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import { exact, plus, type Uncertain } from '../../measure/uncertain.ts'
import type { AsBuilt } from '../../records/as-built.ts'
import { statedValue } from '../../records/claim.ts'
import { partOnRecord } from '../../records/part.ts'
import type { CountedArea } from '../../rules/values/perc-table.ts'
import type { Case } from '../case.ts'
import { claimFact, type Fact, known, lacking } from '../fact.ts'
import type { Gap } from '../gap.ts'
import type { Exhibit } from '../outcome.ts'
import type { Pairing } from '../pairing.ts'
import { exactly } from '../quantity.ts'
import { absorbingShape, isAnother } from './absorbing-shape.ts'

export type AbsorbingArea = {
  readonly sqFt: Uncertain
  readonly steps: readonly Step[]
  readonly bed: boolean
  /** Seepage pits and nothing else. */
  readonly pit: boolean
  /** The shallowest gravel below a pipe, inches; null where a trench's is not known, or there is no trench. */
  readonly gravelIn: number | null
}

/**
 * The absorption area in service, sq ft: each part by the inspection's readings, and by the record's where the inspection has
 * none. A pit counts by its sidewall alone (EPA 625/1-80-012, 1980, p. 236), the rest as the table says.
 */
export function absorbingArea(given: Case, counts: CountedArea): Fact<AbsorbingArea> {
  const parts = given.pairings.filter(({ built }) => isAbsorption(built.kind))
  if (parts.length === 0) return lacking({ gap: 'no-absorption-area' })
  const unanswered = openQuestion(given.asBuilt)
  if (unanswered) return lacking(unanswered)
  const exhibits: Exhibit[] = []
  const areas: AbsorbingArea[] = []
  for (const part of parts) {
    const fact = areaOf(part, given, counts)
    if (fact.state !== 'known') return fact
    areas.push(fact.value)
    exhibits.push(...fact.exhibits)
  }
  const total = areas.reduce((sum, area) => ({
    sqFt: plus(sum.sqFt, area.sqFt),
    steps: [...sum.steps, ...area.steps],
    bed: sum.bed || area.bed,
    pit: sum.pit && area.pit,
    gravelIn: sum.gravelIn === null || area.gravelIn === null ? null : Math.min(sum.gravelIn, area.gravelIn),
  }))
  const sum: Step = {
    says: 'All that absorbs, together',
    formula: 'A = A1 + A2 + …',
    numbers: areas.map(({ sqFt }) => `${printSignificant(sqFt.value)} sq ft`).join(' + '),
    result: `${printSignificant(total.sqFt.value)} sq ft`,
  }
  return known(areas.length > 1 ? { ...total, steps: [...total.steps, sum] } : total, ...exhibits)
}

/** Which of the fields still lie in service is asked of the file: until that is answered, a sum would count one too many. */
function openQuestion({ contradictions, components }: AsBuilt): Gap | null {
  const fields = components.filter(({ kind, standing }) => isAbsorption(kind) && standing === 'in-service')
  for (const { permits: _, ...it } of contradictions) {
    if (it.gap === 'beside-or-instead') return it
    const ofField = 'verb' in it && it.part.kind !== 'system' && isAbsorption(it.part.kind)
    if (ofField && it.gap === 'which-target') return it
    // It replaces a field that no permit put in: with no other on record it is the only one.
    if (ofField && it.gap === 'no-target' && fields.length > 1) return it
  }
  return null
}

function areaOf(pairing: Pairing, given: Case, counts: CountedArea): Fact<AbsorbingArea> {
  const fact = absorbingShape(pairing, given)
  if (fact.state !== 'known') return asThePaperSays(pairing, fact)
  const { kind, shape, gravelIn } = fact.value
  const area = absorptionArea(shape, surfaceThatCounts(shape.kind, counts))
  if (!area.ok) return lacking({ gap: 'impossible', part: partOnRecord(pairing.built), issues: area.error })
  const { value: sqFt, steps } = area.value
  return known({ sqFt, steps, bed: kind === 'bed', pit: kind === 'seepage-pit', gravelIn }, ...fact.exhibits)
}

/**
 * The area that the permit states, where dimensions lack: the figure of a design, of the surface that its own table counted.
 * Of a part that was found to be of another kind it says nothing.
 */
function asThePaperSays(pairing: Pairing, otherwise: Fact<never>): Fact<AbsorbingArea> {
  const { built } = pairing
  if (isAnother(pairing) || built.measures.area.state === 'silent') return otherwise
  const stated = claimFact(built.measures.area, 'area', partOnRecord(built), (value) =>
    exactly(value, 'sq ft'),
  )
  if (stated.state !== 'known') return stated
  const step: Step = {
    says: `As the permit states it, of ${built.label}`,
    formula: 'A = stated',
    numbers: `${printSignificant(stated.value, 6)} sq ft`,
    result: `${printSignificant(stated.value, 6)} sq ft`,
  }
  const gravelFt = statedValue(built.measures.effectiveDepth)?.ft ?? null
  return known(
    {
      sqFt: exact(stated.value),
      steps: [step],
      bed: built.kind === 'bed',
      pit: built.kind === 'seepage-pit',
      gravelIn: built.kind === 'trench' && gravelFt !== null ? gravelFt * 12 : null,
    },
    ...stated.exhibits,
  )
}
