import { describe, expect, test } from 'vitest'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { ROOMS, STATUS_IN_WORDS, statusLetter } from '../../../src/letters/content/status-letter.ts'
import { TOPICS, topicOf } from '../../../src/letters/content/topics.ts'
import { CHECKS } from '../../../src/reconcile/register.ts'
import { STATUS_WORDS } from '../../../src/reconcile/status.ts'
import { play } from '../../corpus/play.ts'
import { book, factsOf, frameOf, twelve } from '../samples.ts'

const [ample] = ROOMS

describe('what a status letter says', () => {
  test('every check has its words, and every word its check', () => {
    for (const { id } of CHECKS) expect(topicOf(id, null), id).toBeDefined()
    const ids = new Set(CHECKS.map(({ id }) => id))
    expect(Object.keys(TOPICS).filter((key) => !ids.has(key.split(' | ')[0]!))).toEqual([])
    expect(Object.keys(STATUS_IN_WORDS)).toEqual([...STATUS_WORDS])
  })

  test('nothing that one rule grants and another denies counts as agreeing', () => {
    const facts = factsOf(twelve)
    const letter = statusLetter(frameOf('status'), facts, ample)
    const bad = facts.reconciliation!.outcomes.filter(
      ({ verdict }) => verdict === 'differs' || verdict === 'falls-short',
    )
    expect(bad.length).toBeGreaterThan(3)
    for (const { check, facet, subject } of bad) {
      const line = letter.agrees.find(({ what }) => what === topicOf(check, facet)?.agrees)
      expect(line?.labels.split(', ') ?? []).not.toContain(subject.label)
    }
  })

  test('what was not reached or not looked for stands under its own heading, and never as missing', () => {
    const { notSeen, open } = statusLetter(frameOf('status'), factsOf(twelve), ample)
    expect(notSeen).toEqual(['Trench 3 was not reached: it is paved over.'])
    expect(open.map(({ says }) => says).join()).not.toContain('rench 3')
  })

  test('without an inspection, it says that nobody looked', () => {
    const letter = statusLetter(frameOf('status'), factsOf({ ...twelve, findings: null }), ample)
    expect(letter.notSeen).toEqual(['Nothing in the ground: no inspection has been handed in.'])
    expect(letter.basis).toContain('No inspection has been handed in.')
  })

  test('with an empty file too', () => {
    const facts = { ...factsOf({ ...twelve, permits: [], findings: null }), reconciliation: null }
    const letter = statusLetter(frameOf('status'), facts, ample)
    expect(letter.basis).toBe('Nothing is on file for this parcel, and no inspection has been handed in.')
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
    const tightest = letters.at(-1)!
    expect(tightest.openMore).toBe(
      `And ${facts.status.outstanding.length - 3} more, named in the county’s file.`,
    )
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
    expect(JSON.stringify(factsOf(input).reconciliation)).toContain(notes)
  })

  test('in no story of the county are the inspector’s or the reader’s words on the letter', () => {
    const files = readStories().flatMap(({ parcels, asOf }) => parcels.map((file) => ({ file, asOf })))
    expect(files.length).toBeGreaterThan(20)
    for (const { file, asOf } of files) {
      const { reconciliation, status } = play(file, asOf, book)
      const standing = reconciliation.discrepancies.map(({ sentences, severity }) => ({
        says: sentences.agent,
        severity,
        decided: null,
      }))
      const words = JSON.stringify(
        statusLetter(frameOf('status'), { status, reconciliation, standing }, ample),
      )
      const told = file.findings.flatMap(({ record }) => [
        record.notes,
        ...record.components.flatMap(({ note, conditionWords }) => [note, conditionWords]),
      ])
      for (const text of told.filter((it) => it !== null)) expect(words).not.toContain(text)
    }
  })
})
