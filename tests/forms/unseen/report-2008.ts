import { type Desk, fieldOf, gallons, material, measure, OWNERS, partAt } from './desk.ts'

/** An inspector's report in sections: two columns of keys and values, parts that do not apply, checks passed. */
export function report2008({ sheets, roll }: Desk): void {
  const sheet = sheets[0]!
  const v = (pointer: string): string => sheet.value(pointer)
  const key = { face: 'Helvetica-Bold', size: 8.5 } as const
  const tank = partAt(sheet, 'tank')!
  const { at, kind } = fieldOf(sheet)
  const colon = roll.chance(0.7) ? ':' : ''
  let y = 40
  sheet.text('Onsite System Final Report', 60, y, { face: 'Helvetica-Bold', size: 14 })
  y += 34
  const section = (title: string): void => {
    y += 6
    sheet.text(title, 50, y, { face: 'Helvetica-Bold', size: 10 })
    sheet.rule(50, y + 13, 560)
    y += 20
  }
  const row = (...pairs: readonly (readonly [string, string])[]): void => {
    pairs.forEach(([label, value], nth) => {
      sheet.text(`${label}${colon}`, 56 + nth * 260, y, key)
      sheet.text(value, 172 + nth * 260, y)
    })
    y += 16
  }
  section('Property')
  row(['Permit', v('/number')], ['Tax parcel', v('/parcelNumber')])
  row(['Street', v('/address')], ['Owner name', roll.pick(OWNERS)])
  row(
    ['Date of permit', v('/issuedOn')],
    ['Application received', `${roll.whole(1, 12)}/${roll.whole(1, 28)}/2008`],
  )
  section('Design')
  row(['Bedrooms', v('/bedrooms')], ['Gallons per day', v('/designFlowGpd')])
  row(['Soil texture', v('/soilTexture')], ['Perc (mpi)', v('/percRateMpi')])
  section('Treatment tank')
  row(['Capacity', gallons(roll, v(`${tank}/capacity`))], ['Compartments', v(`${tank}/compartments`)])
  row(
    ['Construction', material(roll, v(`${tank}/material`))],
    ['Depth of cover', roll.pick(['N/A', 'not measured', ''])],
  )
  section('Pump tank')
  row(['Capacity', 'N/A'], ['Construction', 'N/A'])
  section(kind === 'seepage-pit' ? 'Seepage pits' : kind === 'trench' ? 'Trenches' : 'Bed')
  if (kind === 'seepage-pit') {
    row(['Quantity', v(`${at}/count`)], ['Diameter', measure(roll, v(`${at}/diameter`))])
    row(
      ['Sidewall below inlet', measure(roll, v(`${at}/effectiveDepth`))],
      ['Spacing', roll.pick(["18'", '20 ft'])],
    )
  } else {
    if (kind === 'trench')
      row(['Quantity', v(`${at}/count`)], ['Spacing on center', roll.pick(["6'", '8 ft'])])
    row(['Length', measure(roll, v(`${at}/length`))], ['Width', measure(roll, v(`${at}/width`))])
    row(
      ['Aggregate below pipe', measure(roll, v(`${at}/effectiveDepth`))],
      ['Depth of dig', roll.pick(['30 in', '36 in'])],
    )
  }
  section('Checks')
  for (const check of ['Setback to well', 'Tank watertight', 'Effluent filter present', 'Alarm tested'])
    row([check, roll.pick(['Yes', 'N/A', 'Pass', 'No'])])
  section('Result')
  row(['Approved on', v('/approvedOn')], ['Inspector', 'on file'])
  row(['Installer', sheet.truth.noise.installer], ['Fee', sheet.truth.noise.fee])
}
