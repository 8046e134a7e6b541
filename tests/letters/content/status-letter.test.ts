import { describe, expect, test } from 'vitest'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { ROOMS, statusLetter } from '../../../src/letters/content/status-letter.ts'
import { openPart } from '../../../src/reconcile/detail.ts'
import { CHECKS } from '../../../src/reconcile/register.ts'
import { STATUS_WORDS } from '../../../src/reconcile/status.ts'
import { EN } from '../../../src/words/agent/en.ts'
import { itemWords, VOICES } from '../../../src/words/agent/status.ts'
import { TOPICS, topicOf } from '../../../src/words/agent/topics.ts'
import { LANGUAGES } from '../../../src/words/language.ts'
import { play } from '../../corpus/play.ts'
import { book, factsOf, frameOf, twelve } from '../samples.ts'

const [ample] = ROOMS

describe('what a status letter says', () => {
  test('every check has its words, and every word its check', () => {
    const ids = new Set(CHECKS.map(({ id }) => id))
    for (const language of LANGUAGES) {
      for (const id of ids) expect(topicOf(language, id, null), id).toBeDefined()
      expect(Object.keys(TOPICS[language]).filter((key) => !ids.has(key.split(' | ')[0]!))).toEqual([])
      expect(Object.keys(VOICES[language].word)).toEqual([...STATUS_WORDS])
    }
  })

  test('nothing that one rule grants and another denies counts as agreeing', () => {
    const facts = factsOf(twelve)
    const letter = statusLetter(frameOf('status'), facts, ample)
    const bad = facts.files[0].file!.answer.outcomes.filter(
      ({ verdict }) => verdict === 'differs' || verdict === 'falls-short',
    )
    expect(bad.length).toBeGreaterThan(3)
    for (const { check, facet, subject } of bad) {
      const line = letter.agrees.find(({ what }) => what === topicOf('en', check, facet)?.agrees)
      expect(line?.labels.split(', ') ?? []).not.toContain(EN.part(openPart(subject)))
    }
  })

  test('what was not reached or not looked for stands under its own heading, and never as missing', () => {
    const { notSeen, open } = statusLetter(frameOf('status'), factsOf(twelve), ample)
    expect(notSeen).toEqual(['Drainfield trench 3: not reached, because it is paved over.'])
    expect(JSON.stringify(open)).toContain('The inspector did not locate drainfield trench 3.')
    expect(JSON.stringify(open.filter(({ about }) => /rench 3/.test(about)))).not.toMatch(
      /did not find|missing/i,
    )
  })

  test('without an inspection, it says that nobody looked', () => {
    const letter = statusLetter(frameOf('status'), factsOf({ ...twelve, findings: null }), ample)
    expect(letter.notSeen).toEqual(['No inspection has been submitted.'])
    expect(letter.basis).toContain('No inspection has been submitted.')
  })

  test('with an empty file too', () => {
    const facts = {
      ...factsOf({ ...twelve, permits: [], findings: null }),
      files: [{ system: null, file: null }] as const,
    }
    const letter = statusLetter(frameOf('status'), facts, ample)
    expect(letter.basis).toBe('Nothing is on file for this parcel, and no inspection has been submitted.')
  })

  test('less room cuts what agrees before what somebody has to do, and says how much was cut', () => {
    const facts = factsOf(twelve)
    const letters = ROOMS.map((room) => statusLetter(frameOf('status'), facts, room))
    const told = letters.map(({ open, agrees }) => [open.length, agrees.length])
    for (const [at, [open, agrees]] of told.entries()) {
      if (at === 0) continue
      expect(open).toBeLessThanOrEqual(told[at - 1]![0]!)
      expect(agrees).toBeLessThanOrEqual(told[at - 1]![1]!)
    }
    const reviewing = facts.status.items.filter(({ state }) => state === 'county-reviewing').length
    expect(reviewing).toBeGreaterThan(0)
    expect(letters.at(-1)!.openMore).toBe(`And ${reviewing} more that the county is reviewing.`)
    const must = facts.status.items.filter(({ state }) => state !== 'county-reviewing')
    expect(must.length).toBeGreaterThan(0)
    for (const { open } of letters)
      for (const item of must) expect(JSON.stringify(open)).toContain(itemWords(item, 'en').required)
  })
})

describe('what it keeps to itself', () => {
  const notes = 'NOTE-OF-THE-INSPECTOR'
  const inspection = twelve.findings!
  const input = {
    ...twelve,
    findings: {
      ...inspection,
      firm: 'FIRM-BY-NAME',
      record: {
        ...inspection.record,
        notes,
        components: [
          ...inspection.record.components.map((found) => ({ ...found, note: notes, conditionWords: notes })),
          { ...inspection.record.components[0]!, key: null, label: `${notes} behind the shed`, note: notes },
          {
            ...inspection.record.components[10]!,
            key: null,
            label: `${notes} pit`,
            kind: 'seepage-pit' as const,
            condition: 'sound' as const,
          },
        ],
      },
    },
  }

  test('no note, no name that the inspector gave, no firm, no owner and no scan', () => {
    for (const room of ROOMS) {
      const words = JSON.stringify(statusLetter(frameOf('status'), factsOf(input), room))
      expect(words).not.toContain(notes)
      expect(words).not.toContain('FIRM-BY-NAME')
    }
    expect(JSON.stringify(factsOf(input).files)).toContain(notes)
  })

  test('in no story of the county are the inspector’s or the reader’s words on the letter', () => {
    const files = readStories().flatMap(({ parcels, asOf }) => parcels.map((file) => ({ file, asOf })))
    expect(files.length).toBeGreaterThan(20)
    for (const { file, asOf } of files) {
      const { reconciliation, status } = play(file, asOf, book)
      const standing = reconciliation.discrepancies.map((discrepancy) => ({
        id: discrepancy.key,
        discrepancy,
        decided: null,
      }))
      const { asBuilt, ...answer } = reconciliation
      const of = { answer, permits: asBuilt.permits, on: asBuilt.on }
      const words = JSON.stringify(
        statusLetter(frameOf('status'), { status, files: [{ system: null, file: of }], standing }, ample),
      )
      const told = file.findings.flatMap(({ record }) => [
        record.notes,
        ...record.components.flatMap(({ note, conditionWords }) => [note, conditionWords]),
      ])
      for (const text of told.filter((it) => it !== null)) expect(words).not.toContain(text)
    }
  })
})
