import { type Desk, fieldOf, gallons, material, measure, OWNERS, partAt, work } from './desk.ts'

/** A clerk's docket: each permit some lines in short behind its number, as it was told over the counter. */
export function docket1954({ sheets, roll }: Desk): void {
  const between = roll.pick(['; ', ', ', '. '])
  const numberFirst = roll.chance(0.7)
  const lateDate = roll.chance(0.5)
  const hang = roll.whole(0, 2) * 22
  sheets[0]!.text('Docket of sewage permits', 60, 40, { size: 13 })
  let y = 74
  for (const sheet of sheets) {
    const v = (pointer: string): string => sheet.value(pointer)
    const tank = partAt(sheet, 'tank')!
    const { at, kind } = fieldOf(sheet)
    const said = [roll.pick(OWNERS), v('/address'), `parcel ${v('/parcelNumber')}`]
    if (!lateDate) said.push(`issued ${v('/issuedOn')}`)
    said.push(`${work(roll, v('/kind'))}`, `${v('/bedrooms')} bedrm.`)
    const size = gallons(roll, v(`${tank}/capacity`))
    const stuff = material(roll, v(`${tank}/material`))
    said.push(roll.pick([`${size} ${stuff} tank`, `Sept. tk. ${size} ${stuff}`, `${stuff} S.T. ${size}`]))
    if (kind === 'seepage-pit')
      said.push(
        `${v(`${at}/count`)} pit${v(`${at}/count`) === '1' ? '' : 's'} ${measure(roll, v(`${at}/diameter`))} dia. x ${measure(roll, v(`${at}/effectiveDepth`))} below inlet`,
      )
    else if (kind === 'trench')
      said.push(
        `${v(`${at}/count`)}-${v(`${at}/length`).replace(' ft', "'")} x ${measure(roll, v(`${at}/width`))} lines, ${measure(roll, v(`${at}/effectiveDepth`))} rock`,
      )
    else
      said.push(
        `bed ${v(`${at}/length`).replace(' ft', "'")} x ${v(`${at}/width`).replace(' ft', "'")}, ${measure(roll, v(`${at}/effectiveDepth`))} gravel`,
      )
    if (lateDate) said.push(`iss. ${v('/issuedOn')}`)
    said.push(`O.K. ${v('/approvedOn')}`, `by ${sheet.truth.noise.installer}`)
    const number = numberFirst ? `${v('/number')}  ` : `Permit ${v('/number')} to `
    sheet.text(number + said.join(between), 60 + (numberFirst ? 0 : hang), y, { width: 480 - hang })
    y = sheet.pdf.y + roll.whole(8, 16)
  }
}
