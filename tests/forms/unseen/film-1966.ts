import { type Desk, fieldOf, gallons, material, measure, OWNERS, partAt } from './desk.ts'

/** Two cards on one frame of film, each of another permit: captions in small capitals, ties by letters and figures. */
export function film1966({ sheets, roll }: Desk): void {
  const captionUnder = roll.chance(0.5)
  const order = roll.chance(0.5)
  sheets.forEach((sheet, half) => {
    const left = 28 + half * 386
    const v = (pointer: string): string => sheet.value(pointer)
    const tank = partAt(sheet, 'tank')!
    const box = partAt(sheet, 'distribution-box')
    const { at, kind } = fieldOf(sheet)
    sheet.text('COUNTY SANITARIAN - INSTALLATION CARD', left + 30, 36, { face: 'Helvetica-Bold', size: 9 })
    let y = 62
    const pair = (caption: string, value: string, x: number): void => {
      const small = { face: 'Helvetica', size: 6.5 } as const
      sheet.text(caption, left + x, captionUnder ? y + 12 : y, small)
      sheet.text(value, left + x + 4, captionUnder ? y : y + 9)
    }
    const line = (...pairs: readonly (readonly [string, string])[]): void => {
      pairs.forEach(([caption, value], nth) => {
        pair(caption, value, nth * (350 / pairs.length))
      })
      y += 27
    }
    line(['PERMIT', v('/number')], ['PARCEL', v('/parcelNumber')], ['DATE OF PERMIT', v('/issuedOn')])
    line(['OWNER', roll.pick(OWNERS)], ['LOCATION', v('/address')])
    line(['BEDROOMS', v('/bedrooms')], ['SOIL', v('/soilTexture')], ['PERC. MIN/IN', v('/percRateMpi')])
    line(
      ['TANK CAP.', gallons(roll, v(`${tank}/capacity`))],
      ['TANK MATERIAL', material(roll, v(`${tank}/material`))],
      ['LIQ. DEPTH', v(`${tank}/liquidDepth`)],
    )
    if (kind === 'seepage-pit')
      line(
        ['NO. PITS', v(`${at}/count`)],
        ['PIT DIA.', measure(roll, v(`${at}/diameter`))],
        ['DEPTH BELOW INLET', measure(roll, v(`${at}/effectiveDepth`))],
      )
    else
      line(
        ...(kind === 'trench' ? ([['NO. LINES', v(`${at}/count`)]] as const) : []),
        [kind === 'trench' ? 'LENGTH EACH LINE' : 'BED LENGTH', measure(roll, v(`${at}/length`))],
        [kind === 'trench' ? 'TRENCH WIDTH' : 'BED WIDTH', measure(roll, v(`${at}/width`))],
        ['STONE UNDER PIPE', measure(roll, v(`${at}/effectiveDepth`))],
      )
    const tied = [tank, ...(box ? [box] : [])]
    if (order) {
      sheet.text(`1. Tank${box ? '   2. Dist. box' : ''}`, left, y)
      y += 15
    }
    for (const [letter, side] of [
      ['A', 'a'],
      ['B', 'b'],
    ] as const)
      tied.forEach((part, nth) => {
        sheet.text(
          `${letter}-${nth + 1}  ${v(`${part}/tie/${side}`)}`,
          left + nth * 110 + (side === 'b' ? 200 * (tied.length - 1) : 0),
          y + (side === 'b' && tied.length === 1 ? 14 : 0),
        )
      })
    y += tied.length === 1 ? 32 : 18
    if (!order) {
      sheet.text(`1 = tank${box ? ', 2 = dist. box' : ''}`, left, y)
      y += 15
    }
    if (sheet.has('/reference/a')) {
      sheet.text(`A = ${v('/reference/a')}`, left, y)
      sheet.text(`B = ${v('/reference/b')}`, left, y + 14)
      y += 32
    }
    sheet.text(`Finaled ${v('/approvedOn')}   Inst. by ${sheet.truth.noise.installer}`, left, y)
  })
}
