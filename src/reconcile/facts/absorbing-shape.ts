import { type AbsorptionKind, isAbsorption } from '../../catalog/kinds.ts'
import type { AbsorptionShape } from '../../geometry/absorption/absorption-shape.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import { statedValue } from '../../records/claim.ts'
import { partOnRecord } from '../../records/part.ts'
import type { Case } from '../case.ts'
import { claimFact, type Fact, known, lacking } from '../fact.ts'
import type { Exhibit } from '../outcome.ts'
import type { Pairing } from '../pairing.ts'
import { showLength } from '../show.ts'
import { asDesigned, asStated, reading } from './found-length.ts'

type Dimension = 'length' | 'width' | 'diameter' | 'effectiveDepth'
const NEEDS: { readonly [K in AbsorptionKind]: readonly Dimension[] } = {
  'seepage-pit': ['diameter', 'effectiveDepth'],
  trench: ['length', 'width'],
  bed: ['length', 'width'],
  chambers: ['length', 'width'],
  mound: ['length', 'width'],
  'drip-field': ['length', 'width'],
}

/** What lies there is what absorbs: a bed found where the record has trenches is a bed, and the only one. */
export const isAnother = ({ built, found }: Pairing): boolean =>
  found?.outcome === 'found' && found.kind !== built.kind && isAbsorption(found.kind)

export type Shaped = {
  readonly kind: AbsorptionKind
  readonly shape: AbsorptionShape
  readonly gravelIn: number | null
  /** A dimension at least is the inspection's. */
  readonly measured: boolean
}

/** Its shape by the inspection's readings, and by the record's where the inspection has none. */
export function absorbingShape(pairing: Pairing, { findings }: Pick<Case, 'findings'>): Fact<Shaped> {
  const { built, found } = pairing
  const seen = found?.outcome === 'found' ? found : null
  const part = partOnRecord(built)
  const another = isAnother(pairing)
  const kind = (another ? seen!.kind : built.kind) as AbsorptionKind
  const exhibits: Exhibit[] = []
  const lengths = new Map<Dimension, Uncertain>()
  let measured = false
  const needs = NEEDS[kind]
  for (const dimension of [
    ...needs,
    ...(needs.includes('effectiveDepth') ? [] : (['effectiveDepth'] as const)),
  ]) {
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
      measured = true
      continue
    }
    if (!needs.includes(dimension) && (another || built.measures[dimension].state !== 'stated')) continue
    if (another) return lacking({ gap: 'not-measured', things: [dimension], part })
    const stated = claimFact(built.measures[dimension], dimension, part, showLength)
    if (stated.state !== 'known') return stated
    lengths.set(
      dimension,
      dimension === 'length'
        ? asStated(stated.value.ft, stated.value.halfStepFt, `stated: length of ${built.label}`)
        : asDesigned(stated.value, `stated: ${dimension} of ${built.label}`),
    )
    if (needs.includes(dimension)) exhibits.push(...stated.exhibits)
  }
  const count = seen?.count ?? (another ? null : statedValue(built.measures.count)) ?? 1
  const gravelFt = seen?.effectiveDepth?.ft ?? statedValue(built.measures.effectiveDepth)?.ft ?? null
  const gravelIn = kind === 'trench' && gravelFt !== null ? gravelFt * 12 : null
  return known(
    { kind, shape: shaped(kind, count, (dimension) => lengths.get(dimension)!), gravelIn, measured },
    ...exhibits,
  )
}

function shaped(
  kind: AbsorptionKind,
  count: number,
  of: (dimension: Dimension) => Uncertain,
): AbsorptionShape {
  const gravel = of('effectiveDepth') as Uncertain | undefined
  const depth = gravel === undefined ? {} : { effectiveDepth: gravel }
  switch (kind) {
    case 'seepage-pit':
      return { kind: 'pits', diameter: of('diameter'), effectiveDepth: of('effectiveDepth'), count }
    case 'trench':
      return {
        kind: 'trenches',
        width: of('width'),
        lengths: Array.from({ length: count }, () => of('length')),
        ...depth,
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
      return { kind: 'bed', length: of('length'), width: of('width'), ...depth }
  }
}
