import { the } from '../records/naming.ts'
import type { Case } from './case.ts'

/** Something that would help and that nobody has to do. Never a discrepancy. */
export type Advice = { readonly about: string; readonly says: string }

export function advise({ findings }: Case): readonly Advice[] {
  const found = findings?.record.components.filter(({ outcome }) => outcome === 'found') ?? []
  const tanks = found.filter(({ kind }) => kind === 'tank')
  const risers = tanks
    .filter(
      ({ riserToGrade, depthToTop }) =>
        riserToGrade === false || (riserToGrade === null && (depthToTop?.ft ?? 0) > 1),
    )
    .map(({ label }) => ({
      about: label,
      says: `a riser brought to grade over ${the(label)}, with a secured cover, would spare the next digging`,
    }))
  const pits = found.filter(({ kind }) => kind === 'seepage-pit' || kind === 'bed' || kind === 'trench')
  const hasPort = found.some(({ kind }) => kind === 'observation-port')
  const port =
    pits.length > 0 && !hasPort
      ? [
          {
            about: pits[0]!.label,
            says: 'an observation port would show how the absorption area takes the flow without digging',
          },
        ]
      : []
  const filter =
    tanks.length > 0 && !found.some(({ kind }) => kind === 'effluent-filter')
      ? [
          {
            about: tanks[0]!.label,
            says: 'an effluent filter in the outlet would keep solids from the absorption area',
          },
        ]
      : []
  const untied = found
    .filter(
      ({ tie, fix, kind }) => tie === null && fix === null && (kind === 'tank' || kind === 'seepage-pit'),
    )
    .map(({ label }) => ({
      about: label,
      says: `two ties from house corners to ${the(label)} would let the next person find it`,
    }))
  return [...risers, ...port, ...filter, ...untied]
}
