import { type Desk, fieldOf, gallons, material, measure, OWNERS, partAt } from './desk.ts'

const ORDER = ['new', 'repair', 'alteration'] as const
const SHOWN = { new: 'New', repair: 'Repair of old system', alteration: 'Alteration' } as const

/** A questionnaire: numbered questions, answers on dots or a line below, boxes drawn to tick. */
export function questions1973({ sheets, roll }: Desk): void {
  const sheet = sheets[0]!
  const v = (pointer: string): string => sheet.value(pointer)
  const print = { face: roll.pick(['Helvetica', 'Times-Roman'] as const), size: 9 }
  const below = roll.chance(0.3)
  const at = roll.whole(290, 350)
  let y = 84
  let nth = 1
  sheet.text('STATEMENT OF SEWAGE DISPOSAL FACILITIES', 150, 40, { face: 'Helvetica-Bold', size: 12 })
  sheet.text('To be filled out by the installer and returned within ten days', 160, 58, print)
  const ask = (question: string, answer: string): void => {
    const dots = below
      ? ''
      : ` ${'. '.repeat(Math.max(2, Math.floor((at - 80 - question.length * 4.4) / 5)))}`
    sheet.text(`${nth}. ${question}${dots}`, 54, y, print)
    if (below) y += 14
    sheet.text(answer, below ? 80 : at, y)
    y += 19
    nth += 1
  }
  const tick = (question: string, choices: readonly (readonly [string, boolean])[]): void => {
    sheet.text(`${nth}. ${question}`, 54, y, print)
    let x = 220
    for (const [choice, isTicked] of choices) {
      sheet.box(x, y - 1, 9, 9)
      if (isTicked) sheet.text('X', x + 1.5, y - 1, { face: 'Helvetica-Bold', size: 9 })
      sheet.text(choice, x + 14, y, print)
      x += 36 + choice.length * 5.2
    }
    y += 19
    nth += 1
  }
  const tank = partAt(sheet, 'tank')!
  const { at: field, kind } = fieldOf(sheet)
  ask('Number of the permit under which the work was done', v('/number'))
  ask("Assessor's number of the land", v('/parcelNumber'))
  ask('Where is the work?', v('/address'))
  ask('Who owns the place?', roll.pick(OWNERS))
  tick(
    'The work is',
    ORDER.map((one) => [SHOWN[one], v('/kind') === one] as const),
  )
  ask('On what day was the permit granted?', v('/issuedOn'))
  ask('How many bedrooms are there?', v('/bedrooms'))
  ask('Is there a garbage grinder?', roll.pick(['no', 'No', 'none']))
  ask('How far is the well from the field?', roll.pick(["110'", '125 ft.', 'over 100 ft']))
  ask('Gallons that the septic tank holds', gallons(roll, v(`${tank}/capacity`)))
  ask('What is the tank made of?', material(roll, v(`${tank}/material`)))
  ask('Tank inside: length', v(`${tank}/length`))
  ask('Tank inside: width', v(`${tank}/width`))
  ask('Depth of liquid in tank', v(`${tank}/liquidDepth`))
  tick('Waste goes to', [
    ['Trenches', kind === 'trench'],
    ['Bed', kind === 'bed'],
    ['Pit', kind === 'seepage-pit'],
    ['Cesspool', false],
  ])
  const name = kind === 'trench' ? 'trench' : kind === 'bed' ? 'bed' : 'pit'
  if (kind !== 'bed') ask(`How many ${name === 'pit' ? 'pits' : 'trenches'}?`, v(`${field}/count`))
  if (kind === 'seepage-pit') {
    ask('Width across of each pit', measure(roll, v(`${field}/diameter`)))
    ask('Depth of pit below the inlet', measure(roll, v(`${field}/effectiveDepth`)))
  } else {
    ask(`Length of ${name === 'bed' ? 'the bed' : 'each trench'}`, measure(roll, v(`${field}/length`)))
    ask(`Width of ${name === 'bed' ? 'the bed' : 'each trench'}`, measure(roll, v(`${field}/width`)))
    ask('Stone beneath the pipe', measure(roll, v(`${field}/effectiveDepth`)))
  }
  ask('Pump, if any', roll.pick(['none', 'N/A', '---']))
  ask('Name of the contractor', sheet.truth.noise.installer)
  ask('Passed by the sanitarian on', v('/approvedOn'))
}
