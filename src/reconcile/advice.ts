import { isAbsorption } from '../catalog/kinds.ts'
import type { Part } from '../records/part.ts'
import { aboutSeen } from './about.ts'
import type { Case } from './case.ts'

export const ADVICE = ['riser', 'observation-port', 'effluent-filter', 'ties'] as const

/** Something that would help and that nobody has to do. Never a discrepancy. */
export type Advice = { readonly about: Part; readonly advice: (typeof ADVICE)[number] }

export function advise(given: Case): readonly Advice[] {
  const found = given.findings?.record.components.filter(({ outcome }) => outcome === 'found') ?? []
  const tanks = found.filter(({ kind }) => kind === 'tank')
  const buried = tanks.filter(
    ({ riserToGrade, depthToTop }) =>
      riserToGrade === false || (riserToGrade === null && (depthToTop?.ft ?? 0) > 1),
  )
  const has = (kind: 'observation-port' | 'effluent-filter') => found.some((it) => it.kind === kind)
  const unseen = has('observation-port') ? [] : found.filter(({ kind }) => isAbsorption(kind)).slice(0, 1)
  const unfiltered = has('effluent-filter') ? [] : tanks.slice(0, 1)
  const untied = found.filter(
    ({ tie, fix, kind }) => tie === null && fix === null && (kind === 'tank' || kind === 'seepage-pit'),
  )
  const to = (advice: Advice['advice']) => (it: (typeof found)[number]) => ({
    about: aboutSeen(it, given),
    advice,
  })
  return [
    ...buried.map(to('riser')),
    ...unseen.map(to('observation-port')),
    ...unfiltered.map(to('effluent-filter')),
    ...untied.map(to('ties')),
  ]
}
