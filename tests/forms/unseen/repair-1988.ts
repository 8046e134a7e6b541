import { type Desk, fieldOf, gallons, material, measure, OWNERS, partAt } from './desk.ts'

/** A repair's sheet: what was found beside what was put in. What was there is nobody's new part. */
export function repair1988({ sheets, roll }: Desk): void {
  const sheet = sheets[0]!
  sheet.truth = { ...sheet.truth, entry: { ...sheet.truth.entry, kind: 'repair' } }
  const v = (pointer: string): string => sheet.value(pointer)
  const print = { face: 'Helvetica', size: 9 } as const
  const tank = partAt(sheet, 'tank')!
  const { at, kind } = fieldOf(sheet)
  const [oldX, newX] = roll.chance(0.8) ? [250, 400] : [400, 250]
  sheet.text('REPAIR INSPECTION', 230, 40, { face: 'Helvetica-Bold', size: 13 })
  const pair = (label: string, value: string, x: number, y: number): void => {
    sheet.text(label, x, y, print)
    sheet.text(value, x + 92, y)
  }
  pair('Permit #', v('/number'), 50, 74)
  pair('Date issued', v('/issuedOn'), 310, 74)
  pair('Parcel #', v('/parcelNumber'), 50, 92)
  pair('Final', v('/approvedOn'), 310, 92)
  pair('Site', v('/address'), 50, 110)
  pair('Owner', roll.pick(OWNERS), 310, 110)
  pair('Bedrooms', v('/bedrooms'), 50, 128)
  pair('Work', v('/kind'), 310, 128)
  let y = 164
  sheet.text(roll.pick(['FOUND', 'EXISTING', 'Existing system']), oldX, y, {
    face: 'Helvetica-Bold',
    size: 9,
  })
  sheet.text(roll.pick(['NEW', 'PUT IN', 'Installed']), newX, y, { face: 'Helvetica-Bold', size: 9 })
  y += 20
  const row = (label: string, old: string, fresh: string): void => {
    sheet.text(label, 50, y, print)
    sheet.text(old, oldX, y)
    sheet.text(fresh, newX, y)
    y += 18
  }
  row('Tank size', roll.pick(['500 gal', '750 gal', '600 gal']), gallons(roll, v(`${tank}/capacity`)))
  row('Tank material', roll.pick(['steel', 'block', 'metal']), material(roll, v(`${tank}/material`)))
  row('Tank liquid depth', roll.pick(["4'", '?', '']), v(`${tank}/liquidDepth`))
  row('Baffles', roll.pick(['gone', 'corroded', 'none']), roll.pick(['OK', 'N/A']))
  if (kind === 'seepage-pit') {
    row('Pits, number', roll.pick(['1', 'one']), v(`${at}/count`))
    row('Pit diameter', roll.pick(["5'", '6 ft']), measure(roll, v(`${at}/diameter`)))
    row('Pit, below inlet', roll.pick(["5'", 'full of sludge']), measure(roll, v(`${at}/effectiveDepth`)))
  } else {
    const name = kind === 'trench' ? 'Trench' : 'Bed'
    if (kind === 'trench') row('Number of trenches', roll.pick(['1', '2']), v(`${at}/count`))
    row(`${name} length`, roll.pick(["40'", '35 ft']), measure(roll, v(`${at}/length`)))
    row(`${name} width`, roll.pick(['18"', '24"', "2'"]), measure(roll, v(`${at}/width`)))
    row('Gravel under pipe', roll.pick(['6"', 'none', '?']), measure(roll, v(`${at}/effectiveDepth`)))
  }
  y += 14
  pair('Soil', v('/soilTexture'), 50, y)
  pair('Contractor', sheet.truth.noise.installer, 310, y)
}
