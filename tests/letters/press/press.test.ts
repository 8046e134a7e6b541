import { createHash } from 'node:crypto'
import { afterAll, describe, expect, test } from 'vitest'
import { openPress } from '../../../src/letters/press/press.ts'
import type { Sheet } from '../../../src/letters/press/sheet.ts'
import { reconcile } from '../../../src/reconcile/reconcile.ts'
import { CAUTIONS } from '../../../src/words/cautions.ts'
import { questionWords } from '../../../src/words/questions.ts'
import * as asked from '../../reconcile/asked.ts'
import { openLetter } from '../open-letter.ts'
import { briefSheet, CHECK, CODE, factsOf, reportSheet, statusSheet, twelve } from '../samples.ts'

const press = openPress()
afterAll(press.close)
const sheets: readonly Sheet[] = [statusSheet(factsOf(twelve)), reportSheet(twelve), briefSheet(twelve)]
const letters = await Promise.all(
  sheets.map(async (sheet) => {
    const printed = await press.print(sheet)
    return { kind: sheet.kind, printed, opened: await openLetter(printed.pdf) }
  }),
)
const [status, report, brief] = letters as [(typeof letters)[0], (typeof letters)[0], (typeof letters)[0]]
const textOf = ({ opened }: typeof status): string => opened.text.join(' ')

describe.each(letters)('the $kind letter, read by another program', ({ kind, printed, opened }) => {
  test('claims PDF/UA-1 (ISO 14289-1), is tagged, and has a title and a language', () => {
    expect(opened.accessibilityPart).toBe('1')
    expect(opened.marked).toBe(true)
    expect(opened.language).toBe('en-US')
    expect(opened.title).toMatch(/ 2026-00017, parcel 07-0412-0031$/)
    expect(opened.pages).toBe(printed.pages)
  })

  test('has one first heading, sections under it, and tables with header cells', () => {
    expect(opened.roles.filter((role) => role === 'H1')).toHaveLength(1)
    expect(opened.roles.filter((role) => role === 'H2').length).toBeGreaterThan(1)
    expect(opened.roles.indexOf('H1')).toBeLessThan(opened.roles.indexOf('H2'))
    for (const role of ['Table', 'TH', 'TD', 'L', 'LI', 'Figure']) expect(opened.roles).toContain(role)
  })

  test('says in words what its pictures show', () => {
    expect(opened.alternatives).toContain(`QR code of the address where this letter can be checked: ${CHECK}`)
    const plans = opened.alternatives.filter((words) =>
      words.startsWith('Site plan to scale. Corner A: SW corner'),
    )
    expect(plans).toHaveLength(kind === 'status' ? 0 : 1)
  })

  test('carries the short check address and nothing else in its QR code, and the code in print', async () => {
    // The seal of a brief stands on its last page.
    if (kind !== 'brief') expect(await opened.readQr()).toBe(CHECK)
    const text = opened.text.join(' ')
    for (const words of [CODE, CHECK, '2026-00017', '07-0412-0031', '14 Heron Hollow Rd', 'Jun 1, 2026']) {
      expect(text).toContain(words)
    }
  })

  test('defers to local codes and is no legal finding', () => {
    const text = opened.text.join(' ')
    expect(text).toContain('Local codes and licensed practice govern')
    expect(text).toMatch(/not a legal finding|Nothing here is a legal finding/)
  })

  test('is the same to the byte when made again, also by another process', async () => {
    const other = openPress()
    const sheet = sheets.find((it) => it.kind === kind)!
    const again = await other.print(structuredClone(sheet))
    other.close()
    const hash = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')
    expect(hash(again.pdf)).toBe(hash(printed.pdf))
    expect(hash((await press.print(sheet)).pdf)).toBe(hash(printed.pdf))
  })
})

describe('the status letter', () => {
  test('is one page, and says what differs, who has to act, what agrees and what nobody looked at', () => {
    expect(status.opened.pages).toBe(1)
    const text = textOf(status)
    for (const words of [
      'Action needed',
      'The septic system needs repair or other action.',
      'The owner must act',
      'Have a licensed installer replace the outlet baffle of the tank.',
      'Capacity as recorded: Septic tank 1',
      'Drainfield trench 3: not reached, because it is paved over.',
      'permit 88-204, approved Jul 2, 1988',
      'the inspection of May 20, 2026',
      'No warranty, no legal finding.',
      'Call 811',
    ]) {
      expect(text).toContain(words)
    }
  })
})

describe('the status letter of the worst parcel there could be', () => {
  // Forty parts, the names as long as a paper may have them, each found failing, open and of another material.
  const parts = Array.from({ length: 40 }, (_, at) => ({
    tag: `seepage pit beyond the second retaining wall, north side ${at + 1}`,
    kind: 'seepage-pit' as const,
    material: 'brick' as const,
  }))
  const worst = asked.inputOf(
    [asked.permit([{ tag: 'tank', kind: 'tank', capacity: '500 gal', material: 'steel' }, ...parts])],
    {
      bedroomsCounted: '9, checked',
      components: parts.map(({ tag }) => ({
        key: `88-1/${tag}`,
        label: tag,
        kind: 'seepage-pit' as const,
        outcome: 'found' as const,
        material: 'concrete-block' as const,
        condition: 'collapsed' as const,
        lidSecured: false,
      })),
    },
  )

  test('is one page too, and names every part that somebody must act on', async () => {
    const facts = factsOf(worst)
    expect(facts.status.items.length).toBeGreaterThan(80)
    const printed = await press.print(statusSheet(facts))
    expect(printed.pages).toBe(1)
    const text = (await openLetter(printed.pdf)).text.join(' ')
    for (const at of [1, 20, 40]) expect(text).toMatch(new RegExp(`Seepage pit [^.]*\\b${at}\\b`))
    expect(text).toContain('Take care.')
    expect(text).toContain(CODE)
  })
})

describe('the report', () => {
  const reconciliation = reconcile(twelve)

  test('has every outcome with its working, its evidence and whether its rules were read', () => {
    const text = textOf(report)
    for (const { outcome } of reconciliation.discrepancies)
      expect(text).toContain(questionWords(outcome.check))
    for (const words of [
      '7.91667 ft × 4 ft × 3.91667 ft',
      'source read',
      'second-hand: read as another source repeats it',
      'Marsh Road Septic Inspections',
      'permit 88-204, typed 2026-01-05',
      'What could not be told, and why',
      'Advice, which nobody has to follow',
    ]) {
      expect(text).toContain(words)
    }
    for (const { says } of CAUTIONS) expect(text).toContain(says)
  })

  test('has every step of every outcome', () => {
    const text = textOf(report).replaceAll(' ', '')
    const steps = reconciliation.outcomes.flatMap((outcome) => outcome.steps)
    expect(steps.length).toBeGreaterThan(50)
    const lost = steps.filter(({ result }) => !text.includes(result.replaceAll(' ', '').slice(0, 12)))
    expect(lost).toEqual([])
  })
})

test('the brief puts the dangers before everything else', () => {
  const [first = ''] = brief.opened.text
  for (const { says } of CAUTIONS) expect(first).toContain(says)
  expect(textOf(brief)).toContain('What to measure, the most telling first')
})

describe('when printing fails', () => {
  const sheet = sheets[0]!

  test('a content that is not a letter is refused with the place, and the next letter prints', async () => {
    await expect(press.print({ kind: 'status', contents: [{}], mostPages: 1 })).rejects.toThrow(
      /status-letter\.typ.*frame/,
    )
    await expect(press.print(sheet)).resolves.toMatchObject({ pages: 1 })
  })

  test('a process that ends takes its own letter along and no other', async () => {
    // Past the filter of `printable`: marks and letters of a script written from right to left, broken over lines.
    const deadly = structuredClone(sheet) as { contents: [{ sentence: string }] } & Sheet
    deadly.contents[0].sentence = Array.from({ length: 200 }, (_, at) =>
      String.fromCodePoint(0x591 + at),
    ).join(' ')
    const results = await Promise.allSettled([press.print(sheet), press.print(deadly), press.print(sheet)])
    expect(results).toMatchObject([
      { status: 'fulfilled' },
      {
        status: 'rejected',
        reason: { name: 'OutsideFailure', message: expect.stringContaining('process ended') },
      },
      { status: 'fulfilled' },
    ])
  })

  test('a press that is closed leaves nobody waiting', async () => {
    const closing = openPress()
    const waiting = Promise.allSettled([closing.print(sheet), closing.print(sheet)])
    closing.close()
    for (const result of await waiting) expect(result).toMatchObject({ reason: { name: 'OutsideFailure' } })
  })

  test('one that takes too long is ended', async () => {
    const hurried = openPress(1)
    await expect(hurried.print(sheet)).rejects.toThrow('The letter could not be printed')
    hurried.close()
  })
})
