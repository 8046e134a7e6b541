import { type Desk, fieldOf, gallons, material, measure, OWNERS, partAt } from './desk.ts'

/** A certificate in print with blanks that somebody typed on; some blanks stay blank or say that they do not apply. */
export function certificate1981({ sheets, roll }: Desk): void {
  const sheet = sheets[0]!
  const v = (pointer: string): string => sheet.value(pointer)
  const print = { face: 'Times-Roman', size: 11 } as const
  const tank = partAt(sheet, 'tank')!
  const { at, kind } = fieldOf(sheet)
  const rule = roll.chance(0.7)
  sheet.text('CERTIFICATE OF COMPLIANCE', 210, 50, { face: 'Times-Bold', size: 15 })
  sheet.text('Individual Sewage Disposal', 240, 72, print)
  let y = 118
  let x = 60
  const say = (words: string): void => {
    for (const word of words.split(' ')) {
      const wide = sheet.pdf.font('Times-Roman').fontSize(11).widthOfString(`${word} `)
      if (x + wide > 555) line()
      sheet.text(word, x, y, print)
      x += wide
    }
  }
  const line = (): void => {
    x = 60
    y += 24
  }
  const blank = (value: string, chars = 16): void => {
    const wide = Math.max(chars * 5, value.length * 6.2 + 10)
    if (x + wide > 560) line()
    if (rule) sheet.rule(x, y + 11, x + wide - 4)
    sheet.text(value, x + 4, y + 1)
    x += wide
  }
  say('This certifies that the disposal works on the land of')
  blank(roll.pick(OWNERS))
  say('situated at')
  blank(v('/address'), 24)
  say(', being parcel')
  blank(v('/parcelNumber'))
  say(', for which permit number')
  blank(v('/number'))
  say('was granted on')
  blank(v('/issuedOn'))
  say(', were looked at on')
  blank(v('/approvedOn'))
  say('and approved.')
  line()
  line()
  say('The works serve')
  blank(v('/bedrooms'), 6)
  say('bedrooms and consist of a septic tank of')
  blank(
    roll.chance(0.5) ? gallons(roll, v(`${tank}/capacity`)) : v(`${tank}/capacity`).replace(' gal', ''),
    10,
  )
  say('gallons, constructed of')
  blank(material(roll, v(`${tank}/material`)), 14)
  say(', a pump chamber of')
  blank(roll.pick(['', 'N/A', '--']), 8)
  say('gallons,')
  if (kind === 'seepage-pit') {
    blank(v(`${at}/count`), 5)
    say('seepage pits, each')
    blank(measure(roll, v(`${at}/diameter`)), 8)
    say('in diameter and')
    blank(measure(roll, v(`${at}/effectiveDepth`)), 8)
    say('deep below the inlet, and')
    blank(roll.pick(['', 'no', 'N/A']), 6)
    say('trenches.')
  } else if (kind === 'trench') {
    blank(v(`${at}/count`), 5)
    say('trenches, each')
    blank(measure(roll, v(`${at}/length`)), 8)
    say('long and')
    blank(measure(roll, v(`${at}/width`)), 8)
    say('wide with')
    blank(measure(roll, v(`${at}/effectiveDepth`)), 8)
    say('of stone below the pipe, and')
    blank(roll.pick(['', 'no', 'none']), 6)
    say('seepage pits.')
  } else {
    say('a seepage bed')
    blank(measure(roll, v(`${at}/length`)), 8)
    say('long by')
    blank(measure(roll, v(`${at}/width`)), 8)
    say('wide with')
    blank(measure(roll, v(`${at}/effectiveDepth`)), 8)
    say('of stone below the pipe, and')
    blank(roll.pick(['', 'no', 'N/A']), 6)
    say('seepage pits.')
  }
  line()
  line()
  say('Work by')
  blank(sheet.truth.noise.installer)
  say('Fee received')
  blank(sheet.truth.noise.fee)
}
