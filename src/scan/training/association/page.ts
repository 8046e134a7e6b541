import { layout } from './arrange.ts'
import { Chance } from './chance.ts'
import { asideItem, formBlock, itemOf as itemFor, permitFacts } from './items.ts'
import { cased } from './labels.ts'
import type { Block, Region } from './parts.ts'
import { makePermit, type Permit } from './permit.ts'
import { plotBlock } from './plot-block.ts'
import { boilerplate, certificateBlock, letterBlock } from './prose-blocks.ts'
import { docketBlock, registerBlock } from './register-block.ts'
import { reportBlock } from './report-block.ts'
import { fragmentLines, runningBlock } from './running-blocks.ts'
import { Sheet } from './sheet.ts'
import { componentTable, existingNew, printout } from './table-blocks.ts'
import { questionBlock, tickBlock } from './tick-blocks.ts'
import { tiesBlock } from './tie-blocks.ts'
import { HEADINGS, SECTIONS } from './words.ts'
import { makeHand } from './written.ts'

const SIZES: readonly (readonly [number, number])[] = [
  [612, 792],
  [612, 792],
  [612, 792],
  [612, 1008],
  [792, 612],
  [432, 288],
  [576, 360],
  [360, 576],
]

/** Only the permit's own items, in some layout. */
const headBlock: Block = (sheet, region, permit) => {
  const facts = sheet.roll.shuffled(permitFacts(sheet, permit))
  const items = facts.map((fact) => itemFor(sheet, fact))
  return layout(sheet)(region, [
    ...items,
    ...Array.from({ length: sheet.roll.whole(0, 4) }, () => asideItem(sheet)),
  ])
}

/** What a paper of one permit may be made of; most are made of several. */
const WHOLE: readonly Block[] = [
  formBlock,
  formBlock,
  questionBlock,
  runningBlock,
  printout,
  letterBlock,
  certificateBlock,
  reportBlock,
]
const MORE: readonly Block[] = [
  tickBlock,
  componentTable,
  existingNew,
  tiesBlock,
  plotBlock,
  fragmentLines,
  headBlock,
  tiesBlock,
  tickBlock,
]

/** One paper of one permit within a region: a whole of one kind, or a head and several pieces. */
function paper(sheet: Sheet, region: Region, permit: Permit): number {
  const { roll } = sheet
  let { y } = region
  const bottom = sheet.height - 30
  const gap = (): number => sheet.size * roll.between(0.5, 3)
  if (roll.chance(0.75)) {
    const size = sheet.size * roll.between(1, 1.6)
    for (let lines = roll.whole(1, 3); lines > 0; lines--) {
      const text = roll.of(HEADINGS)
      const wide = sheet.widthOf(text, size)
      sheet.run(
        roll.chance(0.6) ? Math.max(region.x, (region.x + region.right - wide) / 2) : region.x,
        y,
        [text],
        { size },
      )
      y += size * 1.5
    }
  }
  const blocks: Block[] = roll.chance(0.45)
    ? [roll.pick(WHOLE), ...roll.some(MORE, 0.12)]
    : [roll.chance(0.6) ? headBlock : runningBlock, ...roll.shuffled(MORE).slice(0, roll.whole(1, 4))]
  for (const block of blocks) {
    if (y > bottom - 60) break
    if (roll.chance(0.15)) {
      sheet.run(region.x, y, [cased(sheet, roll.of(SECTIONS))])
      y += sheet.line
    }
    y = block(sheet, { ...region, y }, permit) + gap()
    if (roll.chance(0.12) && y < bottom - 60) y = boilerplate(sheet, region.x, y, region.right) + gap()
  }
  return y
}

/** One page drawn from chance: its seed decides what it is, how it looks and all that stands on it. */
export function drawPage(seed: number): Sheet {
  const roll = new Chance(seed)
  const kind = roll.unit()
  const [width, height] = roll.pick(SIZES)
  if (kind < 0.58) {
    const sheet = new Sheet(roll, width, height)
    const margin = roll.between(18, 60)
    paper(
      sheet,
      { x: margin, right: width - margin, y: roll.between(20, 60) },
      makePermit(roll, makeHand(roll)),
    )
    return sheet
  }
  if (kind < 0.7) return sideBySide(roll)
  if (kind < 0.78) return stacked(roll)
  const wide = roll.chance(0.5)
  const sheet = new Sheet(roll, wide ? 792 : 612, wide ? 612 : 792)
  const margin = roll.between(15, 40)
  const region = { x: margin, right: sheet.width - margin, y: roll.between(20, 60) }
  if (roll.chance(0.7)) {
    sheet.run(region.x + roll.between(0, 120), region.y, [
      roll.of(
        'REGISTER OF PERMITS|SEWAGE PERMITS|Docket|DOCKET OF PERMITS|PERMIT LEDGER|Septic permits 19__|Record of permits issued|LIST OF PERMITS',
      ),
      roll.of('| - cont.| 1963| page 4'),
    ])
    region.y += sheet.size * 2.5
  }
  const most = roll.whole(3, 24)
  const isTwoUp = roll.chance(0.15)
  if (kind < 0.93) {
    if (!isTwoUp || !wide) registerBlock(sheet, region, most, 0)
    else {
      // A book lies open: two pages on one picture.
      const half = (region.x + region.right) / 2
      const { permits } = registerBlock(sheet, { ...region, right: half - 8 }, most, 0)
      registerBlock(sheet, { ...region, x: half + 8 }, most, permits)
    }
  } else docketBlock(sheet, region, Math.min(most, 12), 0)
  return sheet
}

/** Two papers on one picture, each of a permit of its own; now and then the halves of one. */
function sideBySide(roll: Chance): Sheet {
  const sheet = new Sheet(roll, roll.pick([792, 1008, 1224]), roll.pick([612, 612, 792]))
  sheet.size *= roll.between(0.6, 0.85)
  const middle = sheet.width / 2
  const seed = roll.whole(0, 1e9)
  const hand = makeHand(roll)
  for (const half of [0, 1]) {
    sheet.permit = half
    // Often the same form twice: the same throws make the same layout.
    const own = roll.chance(0.1) ? roll.whole(0, 1e9) : seed
    drawOn(
      sheet,
      { x: half * middle + 20, right: (half + 1) * middle - 16, y: 30 },
      own,
      makePermit(roll, hand),
    )
  }
  return sheet
}

function stacked(roll: Chance): Sheet {
  const sheet = new Sheet(roll, 612, 792)
  sheet.size *= roll.between(0.6, 0.85)
  const hand = makeHand(roll)
  const count = roll.whole(2, 4)
  let y = 25
  for (let nth = 0; nth < count && y < 700; nth++) {
    sheet.permit = nth
    const permit = makePermit(roll, hand)
    y = (
      roll.chance(0.7)
        ? roll.pick([runningBlock, runningBlock, headBlock, certificateBlock, letterBlock])
        : formBlock
    )(sheet, { x: 25, right: 587, y }, permit)
    if (roll.chance(0.5)) y = fragmentLines(sheet, { x: 25, right: 587, y }, permit)
    y += roll.between(12, 40)
  }
  return sheet
}

function drawOn(sheet: Sheet, region: Region, seed: number, permit: Permit): void {
  const roll = new Chance(seed)
  sheet.roll = roll
  paper(sheet, region, permit)
}
