import { factOf, tagOf } from './parts.ts'
import type { Component, Fact } from './permit.ts'
import type { Said, Sheet } from './sheet.ts'

/** `2-50' x 36"`, `3 @ 60 ft`, `10 x 32`: a count and sides in one breath; the longer side of a bed is its length. */
export function sides(sheet: Sheet, component: Component): Said[] {
  const { roll } = sheet
  const { facts } = component
  const [count, length, width, depth, diameter] = (
    ['count', 'length', 'width', 'effectiveDepth', 'diameter'] as const
  ).map((f) => facts.find((fact) => fact.f === f))
  const bareAll = roll.chance(0.25)
  const part = (fact: Fact): Said => {
    const { t, unit } = fact.write(bareAll)
    return { t, v: tagOf(sheet, fact, 0, unit) }
  }
  const times = roll.of(' x | x |x| X |X| by ')
  const said: Said[] = []
  if (count && roll.chance(0.75)) {
    const written = count.write(false).t
    said.push(
      { t: written, v: tagOf(sheet, count, 0, 'own') },
      roll.of('-|-| @ | ea. | - |@| lines | each | x '),
    )
  }
  if (diameter && !length) {
    said.push(part(diameter), roll.of(' dia.| dia| diam.|| across|'))
    const deep = factOf(component, 'effectiveDepth', 'depth')
    if (deep)
      said.push(
        times,
        part(deep),
        roll.of(deep.f === 'depth' ? ' deep|| dp.' : ' eff. depth| below inlet| ED| eff.|| deep below inlet'),
      )
    return said
  }
  if (!length) return said
  const swapped = component.kind === 'bed' && width !== undefined && roll.chance(0.4)
  said.push(part(swapped ? width! : length))
  if (roll.chance(0.15)) said.push(roll.of(' long| lg.'))
  if (width && roll.chance(0.85))
    said.push(times, part(swapped ? length : width), roll.chance(0.15) ? roll.of(' wide| w.') : '')
  if (depth && roll.chance(0.45))
    said.push(
      roll.of(', | w/ | |, with |; '),
      part(depth),
      roll.of(' rock| stone| gravel| of rock| gravel under pipe| rock below| wash stone| of gravel| agg.'),
    )
  return said
}
