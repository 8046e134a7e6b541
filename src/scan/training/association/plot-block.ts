import { nameOf } from './labels.ts'
import { type Block, factOf, labelPart, partNamed, type Region, tagOf, valueParts } from './parts.ts'
import { shortName } from './running-blocks.ts'
import type { Said } from './sheet.ts'
import { sides } from './sides.ts'

/** A plan: parts with their callouts here and there, ties along lines, the lot's own sizes and roads between. */
export const plotBlock: Block = (sheet, region: Region, permit) => {
  const { roll } = sheet
  const tall = Math.min(sheet.height - 40 - region.y, roll.between(180, 420))
  if (tall < 120) return region.y
  const taken: { x: number; y: number; w: number }[] = []
  const put = (
    said: readonly Said[],
    size = sheet.size * roll.between(0.75, 1),
  ): { x: number; y: number } | null => {
    const w = sheet.widthOf(said, size)
    for (let tries = 0; tries < 12; tries++) {
      const x = roll.between(region.x, Math.max(region.x + 1, region.right - w))
      const y = region.y + roll.between(0, tall)
      if (
        taken.some((it) => Math.abs(it.y - y) < sheet.size * 1.3 && x < it.x + it.w + 6 && it.x < x + w + 6)
      )
        continue
      taken.push({ x, y, w })
      sheet.run(x, y, said, { size })
      return { x, y }
    }
    return null
  }
  const place = (x: number, y: number, said: readonly Said[], size: number): void => {
    taken.push({ x, y, w: sheet.widthOf(said, size) })
    sheet.run(x, y, said, { size })
  }
  for (const noise of roll.some(
    [
      'HOUSE',
      'House',
      'GARAGE',
      'DRIVE',
      'N',
      'Not to scale',
      'WELL',
      'porch',
      'lake',
      'property line',
      'ROAD',
      "100'",
      "150'",
      '75 ft',
      'scale 1" = 20\'',
      'ditch',
      'tree',
      'fence',
      "well 65'",
      "55' to well",
      "10' min.",
      'deck',
      'slope 4%',
    ],
    0.35,
  ))
    put([noise])
  const size = sheet.size * roll.between(0.8, 1)
  for (const component of permit.components) {
    if (component.existing && roll.chance(0.5)) continue
    const name = partNamed(
      sheet,
      component,
      roll.chance(0.5) ? shortName(sheet, component.kind) : nameOf(sheet, component.kind),
    )
    const capacity = factOf(component, 'capacity')
    const material = factOf(component, 'material')
    const lines: Said[][] = [[...(component.existing ? [roll.of('exist. |old ')] : []), name]]
    if (capacity && roll.chance(0.7))
      lines.splice(roll.whole(0, 1), 0, [valueParts(sheet, capacity, 0, roll.chance(0.3)).at(-1)!])
    if (material && roll.chance(0.3)) lines.push([valueParts(sheet, material, 0).at(-1)!])
    if (!capacity && factOf(component, 'length') && roll.chance(0.7)) lines.push(sides(sheet, component))
    const at = put(lines[0]!, size)
    if (at)
      lines.slice(1).forEach((line, nth) => {
        place(at.x + roll.between(-4, 6), at.y + (nth + 1) * size * 1.2, line, size)
      })
    const [a, b] = [factOf(component, 'tieA'), factOf(component, 'tieB')]
    if (a && b && at && roll.chance(0.35) && !component.existing) {
      // Written along the line from a corner to the part: which corner, the letter says.
      for (const [letter, fact] of [
        ['A', a],
        ['B', b],
      ] as const) {
        const id = sheet.label()
        const { t, unit } = fact.write(false)
        place(
          at.x + roll.between(-30, 60),
          at.y + (letter === 'A' ? -1 : lines.length) * size * roll.between(1.3, 1.7),
          [labelPart(letter, id), roll.of('-|: |=| = | '), { t, v: tagOf(sheet, fact, id, unit) }],
          size,
        )
      }
    }
  }
  return region.y + tall + sheet.size
}
