import { type Desk, fieldOf, material, measure, OWNERS, partAt } from './desk.ts'

/** Two lines to a permit across a wide leaf; what is the same as above is a mark. */
export function ledger1961({ sheets, roll }: Desk): void {
  const head = { face: 'Times-Bold', size: 8 } as const
  const first = sheets[0]!
  const tankInGallons = roll.chance(0.5)
  first.text(`Sewage Disposal Permits - Book ${roll.whole(1, 9)}`, 280, 30, { face: 'Times-Bold', size: 12 })
  const upper = [
    ['Pmt. No.', 40],
    ['Granted', 108],
    ['To whom', 200],
    ['Where', 320],
    ['Parcel', 460],
    ['Bed rms.', 560],
    ['Passed', 620],
  ] as const
  const lower = [
    [tankInGallons ? 'Tank, gals.' : 'Tank', 108],
    ['Built of', 200],
    ['Lines or pits', 320],
    ['Soil', 460],
    ['Done by', 560],
  ] as const
  let y = 62
  const heads = (): void => {
    for (const [words, x] of upper) first.text(words, x, y, head)
    for (const [words, x] of lower) first.text(words, x, y + 11, head)
    first.rule(36, y + 24, 756)
    y += 30
  }
  heads()
  let before = ''
  sheets.forEach((sheet, nth) => {
    if (nth === 6 && roll.chance(0.5)) heads()
    const v = (pointer: string): string => sheet.value(pointer)
    const tank = partAt(sheet, 'tank')!
    const { at, kind } = fieldOf(sheet)
    sheet.text(v('/number'), 40, y)
    sheet.text(v('/issuedOn'), 108, y)
    sheet.text(roll.pick(OWNERS), 200, y)
    sheet.text(v('/address'), 320, y)
    sheet.text(v('/parcelNumber'), 460, y)
    sheet.text(v('/bedrooms'), 570, y)
    sheet.text(v('/approvedOn'), 620, y)
    const below = y + 13
    sheet.text(tankInGallons ? v(`${tank}/capacity`).replace(' gal', '') : v(`${tank}/capacity`), 108, below)
    const stuff = material({ ...roll, pick: (list) => list[0]! }, v(`${tank}/material`))
    sheet.text(stuff === before ? '"' : stuff, 200, below)
    before = stuff
    const lines =
      kind === 'seepage-pit'
        ? `${v(`${at}/count`)} pits ${measure(roll, v(`${at}/diameter`))} x ${measure(roll, v(`${at}/effectiveDepth`))}`
        : kind === 'trench'
          ? `${v(`${at}/count`)} @ ${v(`${at}/length`).replace(' ft', "'")} x ${measure(roll, v(`${at}/width`))}`
          : `bed ${v(`${at}/length`).replace(' ft', "'")} x ${v(`${at}/width`).replace(' ft', "'")}`
    sheet.text(lines, 320, below)
    sheet.text(v('/soilTexture'), 460, below)
    sheet.text(sheet.truth.noise.installer, 560, below)
    y += 34
  })
}
