import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { beside, known } from '../fact.ts'
import { laidOut } from '../facts/stretches.ts'
import { showStretches } from '../show.ts'

type Row = NonNullable<FoundComponent['defects']>[number]
type Question = { readonly found: FoundComponent; readonly row: Row }

/** Each defect that a camera saw is told where it lies: whoever digs has to know from where it is measured. */
export const lineDefects = check({
  id: 'line-defects',
  raises: ['condition-poor'],
  subjects: ({ findings }): readonly Question[] =>
    (findings?.record.components ?? [])
      .filter(({ outcome }) => outcome === 'found')
      .flatMap((found) => (found.defects ?? []).map((row) => ({ found, row }))),
  about: ({ found }, given) => aboutSeen(found, given),
  facet: ({ row }) => `${row.seen} at ${Number(row.at.ft.toFixed(1))} ft`,
  facts: {
    seen: ({ found, row }, given) => {
      const part = aboutSeen(found, given)
      if (given.former.some((old) => old.found === found)) return beside({ aside: 'out-of-service', part })
      const id = given.findings?.id ?? ''
      return known(
        row.seen,
        seen(found, part, id, 'defect', { choice: row.seen }, 'by-camera', row.at.asWritten),
      )
    },
  },
  rules: {},
  decide: ({ seen: defect }, _, { found, row }) => ({
    verdict: 'differs',
    raises: 'condition-poor',
    reason: {
      is: 'defect',
      seen: defect,
      start: found.measuredFrom ?? null,
      at: row.at.ft,
      to: row.to?.ft ?? null,
      material: materialAt(found, row.at.ft),
    },
    certainty: firm('seen'),
  }),
})

function materialAt(found: FoundComponent, ft: number) {
  const shown = showStretches(found.segments ?? [], null)
  const line = laidOut({
    material: found.material,
    sizeFt: null,
    segments: 'stretches' in shown ? shown.stretches : [],
    lengthFt: null,
  })
  return line.find(({ from, to }) => from <= ft && ft <= (to ?? Number.POSITIVE_INFINITY))?.material ?? null
}
