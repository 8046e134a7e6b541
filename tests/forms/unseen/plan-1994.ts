import { type Desk, fieldOf, gallons, material, measure, OWNERS, partAt } from './desk.ts'

/** A plot plan: parts called out in the drawing, the lot's own sizes between them, a small table of ties. */
export function plan1994({ sheets, roll }: Desk): void {
  const sheet = sheets[0]!
  const v = (pointer: string): string => sheet.value(pointer)
  const print = { face: 'Helvetica', size: 8 } as const
  const tank = partAt(sheet, 'tank')!
  const box = partAt(sheet, 'distribution-box')
  const { at, kind } = fieldOf(sheet)
  const shift = roll.whole(-20, 30)
  sheet.text('AS-BUILT SKETCH', 250, 34, { face: 'Helvetica-Bold', size: 12 })
  sheet.box(50, 60, 512, 400)
  sheet.text(`${roll.whole(90, 200)}'`, 290, 64, print)
  sheet.text(`${roll.whole(150, 300)}'`, 536, 250, print)
  sheet.text('N', 530, 76, print)
  sheet.box(200 + shift, 110, 140, 80)
  sheet.text('HOUSE', 245 + shift, 142, print)
  sheet.text('A', 192 + shift, 192, print)
  sheet.text('B', 344 + shift, 192, print)
  sheet.text('Well', 470, 110, print)
  sheet.text(`${roll.whole(55, 90)}' to well`, 420, 170, print)
  sheet.pdf
    .lineWidth(0.7)
    .rect(230 + shift, 230, 60, 26)
    .stroke()
  sheet.text(
    `${gallons(roll, v(`${tank}/capacity`))} ${material(roll, v(`${tank}/material`))}`,
    300 + shift,
    232,
    print,
  )
  sheet.text('septic tank', 300 + shift, 243, print)
  if (box) sheet.text('D-box', 285 + shift, 285, print)
  sheet.box(160 + shift, 320, 240, 90)
  const said =
    kind === 'seepage-pit'
      ? `${v(`${at}/count`)} drywell(s) ${measure(roll, v(`${at}/diameter`))} diam., ${measure(roll, v(`${at}/effectiveDepth`))} below inlet`
      : kind === 'trench'
        ? `${v(`${at}/count`)} trenches ${measure(roll, v(`${at}/length`))} x ${measure(roll, v(`${at}/width`))}`
        : `Leach bed ${measure(roll, v(`${at}/length`))} x ${measure(roll, v(`${at}/width`))}`
  sheet.text(said, 170 + shift, 350, print)
  if (kind !== 'seepage-pit')
    sheet.text(`${measure(roll, v(`${at}/effectiveDepth`))} stone under pipe`, 170 + shift, 366, print)
  sheet.text(roll.pick(['TOWN ROAD', 'Lane', 'Private drive']), 270, 446, print)
  let y = 480
  const table = roll.chance(0.5)
  if (table) {
    sheet.text('TIES', 60, y, { face: 'Helvetica-Bold', size: 9 })
    sheet.text('A', 150, y, print)
    sheet.text('B', 220, y, print)
  }
  for (const [name, part] of [
    ['Tank', tank],
    ['D-box', box],
  ] as const) {
    if (!part) continue
    y += 15
    if (table) {
      sheet.text(name, 60, y)
      sheet.text(v(`${part}/tie/a`), 140, y)
      sheet.text(v(`${part}/tie/b`), 210, y)
    } else
      sheet.text(
        `A to ${name.toLowerCase()} ${v(`${part}/tie/a`)}   B to ${name.toLowerCase()} ${v(`${part}/tie/b`)}`,
        60,
        y,
      )
  }
  if (sheet.has('/reference/a')) {
    y += 18
    sheet.text(`A: ${v('/reference/a')}   B: ${v('/reference/b')}`, 60, y)
  }
  const right = (label: string, value: string, row: number): void => {
    sheet.text(`${label}:`, 340, 480 + row * 15, print)
    sheet.text(value, 420, 480 + row * 15)
  }
  right('Permit no.', v('/number'), 0)
  right('Parcel', v('/parcelNumber'), 1)
  right('Owner', roll.pick(OWNERS), 2)
  right('Location', v('/address'), 4)
  right('Installed by', sheet.truth.noise.installer, 5)
  right('Approved', v('/approvedOn'), 6)
}
