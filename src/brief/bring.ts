import { isLine } from '../catalog/kinds.ts'
import type { AsBuilt } from '../records/as-built.ts'
import { statedValue } from '../records/claim.ts'
import type { Bring } from '../words/bring.ts'

/** What to bring, each with what of this parcel asks for it. */
export function bringFor(asBuilt: AsBuilt): readonly Bring[] {
  const serving = asBuilt.components.filter(({ standing }) => standing === 'in-service')
  const some = (...kinds: readonly string[]) => serving.filter(({ kind }) => kinds.includes(kind))
  const tanks = some('tank', 'pump-chamber')
  const depths = serving.flatMap(({ measures }) => statedValue(measures.depthToTop)?.ft ?? [])
  const deep = depths.length > 0 ? Math.max(...depths) : null
  const ties = serving.flatMap(({ measures }) => {
    const tie = statedValue(measures.tie)
    return tie ? [tie.a.ft, tie.b.ft] : []
  })
  const longest = ties.length > 0 ? Math.max(...ties) : null
  const steel = tanks.filter(({ measures }) => statedValue(measures.material) === 'steel')
  return [
    { tool: 'tape', longestFt: longest },
    ...(tanks.length > 0 ? ([{ tool: 'inside-tape' }, { tool: 'gas-meter' }] as const) : []),
    { tool: 'shovel', deepestFt: deep },
    ...(serving.some(({ kind }) => isLine(kind)) || serving.length === 0
      ? [{ tool: 'camera' } as const]
      : []),
    ...(steel.length > 0 ? [{ tool: 'boards' } as const] : []),
    ...(some('pump-chamber').length > 0 ? [{ tool: 'lock' } as const] : []),
    { tool: 'screws' },
  ]
}
