import { type AbsorptionKind, isAbsorption } from '../../catalog/kinds.ts'
import { absorptionArea } from '../../geometry/absorption/absorption-area.ts'
import { type AbsorptionShape, surfaceThatCounts } from '../../geometry/absorption/absorption-shape.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import { plus, type Uncertain } from '../../measure/uncertain.ts'
import { statedValue } from '../../records/claim.ts'
import { partOnRecord } from '../../records/part.ts'
import type { CountedArea } from '../../rules/values/perc-table.ts'
import type { Case } from '../case.ts'
import { claimFact, type Fact, known, lacking } from '../fact.ts'
import type { Exhibit } from '../outcome.ts'
import type { Pairing } from '../pairing.ts'
import { showLength } from '../show.ts'
import { asDesigned, asStated, reading } from './found-length.ts'

export type AbsorbingArea = {
  readonly sqFt: Uncertain
  readonly steps: readonly Step[]
  readonly bed: boolean
  /** Seepage pits and nothing else. */
  readonly pit: boolean
  /** The shallowest gravel below a pipe, inches; null where a trench's is not known, or there is no trench. */
  readonly gravelIn: number | null
}

type Dimension = 'length' | 'width' | 'diameter' | 'effectiveDepth'
const NEEDS: { readonly [K in AbsorptionKind]: readonly Dimension[] } = {
  'seepage-pit': ['diameter', 'effectiveDepth'],
  trench: ['length', 'width'],
  bed: ['length', 'width'],
  chambers: ['length', 'width'],
  mound: ['length', 'width'],
  'drip-field': ['length', 'width'],
}

/**
 * The absorption area in service, sq ft: each part by the inspection's readings, and by the record's where the inspection has
 * none. A pit counts by its sidewall alone (EPA 625/1-80-012, 1980, p. 236), the rest as the table says.
 */
export function absorbingArea(given: Case, counts: CountedArea): Fact<AbsorbingArea> {
  const parts = given.pairings.filter(({ built }) => isAbsorption(built.kind))
  if (parts.length === 0) return lacking({ gap: 'no-absorption-area' })
  const open = given.asBuilt.contradictions.find((it) => it.gap === 'beside-or-instead')
  if (open) {
    const { gap, permit, part, among } = open
    return lacking({ gap, permit, part, among })
  }
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

function areaOf({ built, found }: Pairing, { findings }: Case, counts: CountedArea): Fact<AbsorbingArea> {
  const seen = found?.outcome === 'found' ? found : null
  const part = partOnRecord(built)
  // What lies there is what absorbs: a bed found where the record has trenches is a bed, and the only one.
  const another = seen !== null && seen.kind !== built.kind && isAbsorption(seen.kind)
  const kind = (another ? seen.kind : built.kind) as AbsorptionKind
  const exhibits: Exhibit[] = []
  const lengths = new Map<Dimension, Uncertain>()
  for (const dimension of NEEDS[kind]) {
    const taken = seen?.[dimension]
    if (taken) {
      const read = reading(taken, dimension, {
        part,
        of: built.label,
        findings: findings?.id ?? '',
        alone: () => false,
      })
      lengths.set(dimension, read.length)
      exhibits.push(...read.exhibits)
      continue
    }
    if (another) return lacking({ gap: 'not-measured', things: [dimension], part })
    const stated = claimFact(built.measures[dimension], dimension, part, showLength)
    if (stated.state !== 'known') return stated
    lengths.set(
      dimension,
      dimension === 'length'
        ? asStated(stated.value.ft, stated.value.halfStepFt, `stated: length of ${built.label}`)
        : asDesigned(stated.value, `stated: ${dimension} of ${built.label}`),
    )
    exhibits.push(...stated.exhibits)
  }
  const count = seen?.count ?? (another ? null : statedValue(built.measures.count)) ?? 1
  const shape = shaped(kind, count, (dimension) => lengths.get(dimension)!)
  const area = absorptionArea(shape, surfaceThatCounts(shape.kind, counts))
  if (!area.ok) {
    return lacking({ gap: 'impossible', part, issues: area.error })
  }
  const { value: sqFt, steps } = area.value
  const gravelFt = seen?.effectiveDepth?.ft ?? statedValue(built.measures.effectiveDepth)?.ft ?? null
  const gravelIn = kind === 'trench' && gravelFt !== null ? gravelFt * 12 : null
  return known({ sqFt, steps, bed: kind === 'bed', pit: kind === 'seepage-pit', gravelIn }, ...exhibits)
}

function shaped(
  kind: AbsorptionKind,
  count: number,
  of: (dimension: Dimension) => Uncertain,
): AbsorptionShape {
  switch (kind) {
    case 'seepage-pit':
      return { kind: 'pits', diameter: of('diameter'), effectiveDepth: of('effectiveDepth'), count }
    case 'trench':
      return {
        kind: 'trenches',
        width: of('width'),
        lengths: Array.from({ length: count }, () => of('length')),
      }
    case 'chambers':
      return {
        kind: 'chambers',
        width: of('width'),
        lengths: Array.from({ length: count }, () => of('length')),
        credit: 1,
      }
    case 'mound':
      return { kind: 'mound', basalLength: of('length'), basalWidth: of('width') }
    case 'bed':
    case 'drip-field':
      return { kind: 'bed', length: of('length'), width: of('width') }
  }
}
