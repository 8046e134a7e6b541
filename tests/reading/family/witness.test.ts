import { describe, expect, test } from 'vitest'
import { learnForm } from '../../../src/reading/family/learn.ts'
import type { NamedForm } from '../../../src/reading/family/taught-form.ts'
import {
  isDropped,
  type Witnessed,
  withoutDropped,
  witnessesOf,
} from '../../../src/reading/family/witness.ts'
import { proposePermits } from '../../../src/reading/propose.ts'
import { compare } from '../../forms/compare.ts'
import { lessonOf } from '../../forms/lesson.ts'
import { QUILLBACK } from '../../forms/quillback.ts'
import { readScans } from '../../forms/read-scans.ts'

const scans = (await readScans()).filter(({ layout }) => layout === 'sheet-1972')
const context = { format: QUILLBACK, misread: false }
const lessons = scans
  .filter(({ grade, seed }) => grade === 'fair' && seed <= 7004)
  .map(({ paper, page }) => lessonOf(paper, page))
const right = learnForm(lessons, context)!
const others = scans.filter(({ grade, seed }) => grade === 'fair' && seed > 7004)

/** The same form with one field taken for another: what a person took up without looking. */
const [sheet] = right.sheets
const at = (ask: string) => sheet!.fields.find((field) => field.ask === ask && field.kind === null)!
const wrong = {
  ...right,
  sheets: [
    {
      ...sheet!,
      fields: [
        ...sheet!.fields.filter((field) => field !== at('approvedOn')),
        { ...at('issuedOn'), ask: 'approvedOn' as const },
      ],
    },
  ],
}
const saidOf = (form: typeof right): Witnessed[] => {
  const all = others.flatMap(({ paper, page }) => witnessesOf([lessonOf(paper, page)], form, context).flat())
  return [...Map.groupBy(all, ({ ask, kind }) => `${kind} ${ask}`).values()].map((own) => ({
    ask: own[0]!.ask,
    kind: own[0]!.kind,
    agreed: own.filter(({ agrees }) => agrees).length,
    contradicted: own.filter(({ agrees }) => !agrees).length,
  }))
}

describe('fields of a form in force, held against what is confirmed', () => {
  test('agree where they were learned rightly', () => {
    const said = saidOf(right)
    expect(said.length).toBeGreaterThan(8)
    expect(said.filter(({ contradicted }) => contradicted > 0)).toEqual([])
    expect(withoutDropped(right, said)).toEqual(right)
  })
  test('are dropped where two confirmations contradict them, and only those', () => {
    const said = saidOf(wrong)
    const kept = withoutDropped(wrong, said).sheets[0]!.fields
    expect(kept).toEqual(wrong.sheets[0]!.fields.filter(({ ask }) => ask !== 'approvedOn'))
  })
  test('lose no right value meanwhile: a place that says otherwise is a doubt', () => {
    const byForm = (form?: NamedForm) =>
      others.flatMap(({ paper, page }) =>
        compare(paper, proposePermits([page], QUILLBACK, form ? [form] : [])[0]),
      )
    const after = byForm({ name: 'wrong', form: wrong })
    const lost = byForm().filter((one, nth) => one.right && !after[nth]!.right)
    expect(lost.map(({ pointer }) => pointer)).toEqual([])
  })
  test('stay where one paper of many says otherwise', () => {
    const told = { ask: 'number', kind: null } as const
    expect(isDropped({ papers: 3 }, { ...told, agreed: 0, contradicted: 1 })).toBe(false)
    expect(isDropped({ papers: 3 }, { ...told, agreed: 0, contradicted: 2 })).toBe(true)
    expect(isDropped({ papers: 8 }, { ...told, agreed: 40, contradicted: 3 })).toBe(false)
    expect(isDropped({ papers: 8 }, { ...told, agreed: 40, contradicted: 6 })).toBe(true)
  })
})
