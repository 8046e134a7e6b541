import { describe, expect, test } from 'vitest'
import { learnForm } from '../../../src/reading/family/learn.ts'
import { recognize } from '../../../src/reading/family/recognize.ts'
import { isSameForm } from '../../../src/reading/family/same-form.ts'
import { type NamedForm, taughtForm } from '../../../src/reading/family/taught-form.ts'
import { titleOf } from '../../../src/reading/family/title.ts'
import { proposePermits } from '../../../src/reading/propose.ts'
import { type Compared, compare } from '../../forms/compare.ts'
import { lessonOf } from '../../forms/lesson.ts'
import { QUILLBACK } from '../../forms/quillback.ts'
import { type ReadScan, readScans } from '../../forms/read-scans.ts'

/** Held-out forms, scanned and read by both readers: four fair papers of each teach, the others are read. */
const scans = await readScans()
const TEACHERS = [7001, 7002, 7003, 7004]
const teaches = ({ grade, seed }: ReadScan): boolean => grade === 'fair' && TEACHERS.includes(seed)
const layouts = [...new Set(scans.map(({ layout }) => layout))]
const context = { format: QUILLBACK, misread: false }
const learned = (layout: string, most = 4) =>
  learnForm(
    scans
      .filter((scan) => scan.layout === layout && teaches(scan))
      .slice(0, most)
      .map(({ paper, page }) => lessonOf(paper, page)),
    context,
  )
const forms = layouts.map((name): NamedForm => ({ name, form: learned(name)! }))
const judged = scans.filter((scan) => !teaches(scan))

const sums = (fields: readonly Compared[]) => ({
  right: fields.filter(({ right }) => right).length,
  marked: fields.filter(({ readAlike }) => readAlike === true).length,
  markedWrong: fields.filter(({ readAlike, right }) => readAlike === true && !right).length,
})
const readWith = (known: readonly NamedForm[]) =>
  sums(judged.flatMap(({ paper, page }) => compare(paper, proposePermits([page], QUILLBACK, known)[0])))

describe('a form that four confirmed scans taught', () => {
  test('reads others of it better, fair, bad and faxed, and marks none wrongly that was not before', () => {
    const [before, after] = [readWith([]), readWith(forms)]
    expect(after.right).toBeGreaterThan(1.05 * before.right)
    expect(after.marked).toBeGreaterThanOrEqual(before.marked)
    expect(after.markedWrong).toBeLessThanOrEqual(before.markedWrong)
  })

  test('loses no value that was right without it', () => {
    const lost = judged.flatMap(({ paper, page }) => {
      const by = (known: readonly NamedForm[]) => compare(paper, proposePermits([page], QUILLBACK, known)[0])
      const after = by(forms)
      return by([]).filter(({ right }, at) => right && !after[at]!.right)
    })
    expect(lost).toEqual([])
  })

  test('is told from another: no page is taken for the wrong form', () => {
    const told = judged.map(({ layout, page }) => [
      layout,
      recognize(page, page.words, forms)?.name ?? layout,
    ])
    expect(told.filter(([layout, name]) => name !== layout)).toEqual([])
    const known = judged.filter(({ page }) => recognize(page, page.words, forms) !== null)
    expect(known.length).toBeGreaterThanOrEqual(0.7 * judged.length)
  })

  test('is data: it goes out and comes in as JSON, and reads the same', () => {
    for (const { form } of forms) {
      const again = taughtForm.parse(JSON.parse(JSON.stringify(form)))
      expect(again).toEqual(form)
    }
  })

  test('is named by its own title', () => {
    expect(titleOf(forms[0]!.form)).toMatch(/SEWAGE DISPOSAL INSTALLATION RECORD/i)
  })

  test('knows no more than it was taught: a field stands at one place, and proved itself there', () => {
    for (const { form } of forms)
      for (const { fields } of form.sheets) {
        const names = fields.map(({ ask, kind }) => `${kind} ${ask}`)
        expect(new Set(names).size).toBe(names.length)
        expect(fields.every(({ papers }) => papers >= 2)).toBe(true)
        expect(fields.length).toBeGreaterThan(12)
      }
  })
})

test('two papers teach nothing yet', () => {
  expect(learned(layouts[0]!, 2)).toBeNull()
})

test('papers of two forms are no form', () => {
  const mixed = scans
    .filter((scan) => scan.grade === 'fair' && [7001, 7002].includes(scan.seed))
    .map(({ paper, page }) => lessonOf(paper, page))
  expect(mixed).toHaveLength(4)
  expect(learnForm(mixed, context)).toBeNull()
})

test('filled-in papers of one form are known as such, and those of another never', () => {
  const fair = scans.filter(({ grade }) => grade === 'fair')
  const pairs = fair.flatMap((one, index) => fair.slice(index + 1).map((other) => [one, other] as const))
  const wrong = pairs.filter(([a, b]) => a.layout !== b.layout && isSameForm(a.page, b.page))
  expect(wrong).toEqual([])
  const alike = pairs.filter(([a, b]) => a.layout === b.layout)
  expect(alike.filter(([a, b]) => isSameForm(a.page, b.page)).length).toBeGreaterThan(0.7 * alike.length)
})
