import { isLine } from '../catalog/kinds.ts'
import type { AsBuilt } from '../records/as-built.ts'
import { statedValue } from '../records/claim.ts'

/** What to bring, each with why this parcel asks for it. */
export type Bring = { readonly what: string; readonly because: string }

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
    {
      what: longest === null ? 'a 100 ft tape' : `a tape of at least ${Math.ceil(longest / 25) * 25} ft`,
      because:
        longest === null
          ? 'to tie in what you find'
          : `the longest tie on record is ${longest.toFixed(1)} ft`,
    },
    ...(tanks.length > 0
      ? [
          {
            what: 'a metal tape for the inside, a rule and a sounding rod',
            because: 'capacity and level are to be measured',
          },
          { what: 'a four-gas meter', because: 'a tank or chamber is to be opened' },
        ]
      : []),
    {
      what: deep !== null && deep > 2 ? 'a probe and a long-handled shovel' : 'a probe and a shovel',
      because:
        deep !== null
          ? `covers lie to ${deep.toFixed(1)} ft below grade on record`
          : 'no depth to the covers is on record',
    },
    ...(serving.some(({ kind }) => isLine(kind)) || serving.length === 0
      ? [{ what: 'a line camera with a sonde and its receiver', because: 'lines are to be seen and traced' }]
      : []),
    ...(steel.length > 0
      ? [
          {
            what: 'boards to stand on beside the tank',
            because: 'a steel tank is on record: its top may not carry a person',
          },
        ]
      : []),
    ...(some('pump-chamber').length > 0
      ? [{ what: 'a lock for the pump circuit', because: 'a pump chamber is on record' }]
      : []),
    { what: 'locks or screws for the covers', because: 'every cover is secured before you leave' },
  ]
}
