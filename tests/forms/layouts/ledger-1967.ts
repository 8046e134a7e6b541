import type { Sheet } from '../sheet.ts'

/** A printed form of boxes with small captions at the top left of each and the typed value below; ticks are typed X. */
export function ledger1967(sheet: Sheet): void {
  let y = 90
  sheet.text('QUILLBACK COUNTY BOARD OF HEALTH', 170, 40, { face: 'Times-Bold', size: 13 })
  sheet.text('Permit to construct a private sewage disposal system', 172, 58, {
    face: 'Times-Roman',
    size: 11,
  })
  const row = (
    cells: readonly (readonly [caption: string, value: string, share: number])[],
    height = 34,
  ): void => {
    let x = 40
    for (const [caption, value, share] of cells) {
      const width = 532 * share
      sheet.box(x, y, width, height)
      sheet.text(caption, x + 3, y + 3, { face: 'Times-Roman', size: 7.5 })
      sheet.text(value, x + 8, y + 17)
      x += width
    }
    y += height
  }
  const ticks = (caption: string, options: readonly (readonly [label: string, ticked: boolean])[]): void => {
    sheet.box(40, y, 532, 26)
    sheet.text(caption, 43, y + 3, { face: 'Times-Roman', size: 7.5 })
    let x = 140
    for (const [label, ticked] of options) {
      sheet.box(x, y + 8, 10, 10)
      if (ticked) sheet.text('X', x + 2, y + 9)
      sheet.text(label, x + 15, y + 9, { face: 'Times-Roman', size: 10 })
      x += 100
    }
    y += 26
  }
  const heading = (text: string): void => {
    sheet.text(text, 250, y + 5, { face: 'Times-Bold', size: 10 })
    y += 20
  }
  const v = (pointer: string): string => sheet.value(pointer)
  row([
    ['Permit number', v('/number'), 0.25],
    ['Date issued', v('/issuedOn'), 0.25],
    ['Tax parcel number', v('/parcelNumber'), 0.3],
    ['Fee paid', sheet.truth.noise.fee, 0.2],
  ])
  row([
    ['Property location (street and number)', v('/address'), 0.6],
    ['No. of bedrooms', v('/bedrooms'), 0.2],
    ['Percolation rate, min. per inch', v('/percRateMpi'), 0.2],
  ])
  const kind = v('/kind')
  ticks('Type of permit', [
    ['New', kind === 'new'],
    ['Repair', kind === 'repair'],
    ['Alteration', kind === 'alteration'],
    ['Abandonment', kind === 'abandonment'],
  ])
  const t = `/components/${sheet.find('tank')}`
  heading('SEPTIC TANK')
  row([
    ['Liquid capacity, gallons', v(`${t}/capacity`).replace(' gal', ''), 0.25],
    ['Inside length', v(`${t}/length`), 0.25],
    ['Inside width', v(`${t}/width`), 0.25],
    ['Liquid depth', v(`${t}/liquidDepth`), 0.25],
  ])
  const material = v(`${t}/material`)
  ticks('Material', [
    ['Concrete', material === 'concrete'],
    ['Steel', material === 'steel'],
    ['Block', material === 'concrete-block'],
    ['Other', false],
  ])
  const pit = sheet.find('seepage-pit')
  const trench = sheet.find('trench')
  heading('ABSORPTION SYSTEM')
  if (pit >= 0) {
    row([
      ['Number of seepage pits', v(`/components/${pit}/count`), 0.34],
      ['Outside diameter of pit', v(`/components/${pit}/diameter`), 0.33],
      ['Effective depth below inlet', v(`/components/${pit}/effectiveDepth`), 0.33],
    ])
  }
  if (trench >= 0) {
    row([
      ['Number of trenches', v(`/components/${trench}/count`), 0.25],
      ['Length of each trench', v(`/components/${trench}/length`), 0.25],
      ['Trench width', v(`/components/${trench}/width`), 0.25],
      ['Depth of gravel under pipe', v(`/components/${trench}/effectiveDepth`), 0.25],
    ])
  }
  heading('LOCATION TIES')
  row([
    ['Corner A', v('/reference/a'), 0.4],
    ['Corner B', v('/reference/b'), 0.4],
    ['Distance A to B', v('/reference/baseline'), 0.2],
  ])
  row([
    ['Septic tank: from A', v(`${t}/tie/a`), 0.25],
    ['Septic tank: from B', v(`${t}/tie/b`), 0.25],
    ['Well depth', sheet.truth.noise.wellDepth, 0.5],
  ])
  row([
    ['Installed by', sheet.truth.noise.installer, 0.5],
    ['Date of final approval', v('/approvedOn'), 0.5],
  ])
}
