import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { loadRuleBook } from '../../../src/files/rule-packs.ts'
import type { Line } from '../../../src/http/pages/parcel/comparison/line.ts'
import { type Comparison, presentComparison } from '../../../src/http/pages/parcel/comparison/present.ts'
import { isKeptFrom } from '../../../src/words/kept-from.ts'
import { questionWords } from '../../../src/words/questions.ts'
import { play } from '../../corpus/play.ts'

const book = must(await loadRuleBook())
const stories = readStories()

/** Every parcel of every story, as its page compares it on the story's last day and on the days before. */
const compared = stories.flatMap(({ slug, asOf, parcels }) =>
  parcels.flatMap((file) =>
    [asOf, ...file.earlier.map(({ on }) => on)].map((day) => {
      const { reconciliation } = play(file, day, book)
      const inspection = file.findings.filter(({ submittedOn }) => submittedOn <= day).at(-1)?.record ?? null
      const name = `${slug} ${file.parcel.number} on ${day}`
      return { name, reconciliation, comparison: presentComparison(reconciliation, inspection) }
    }),
  ),
)
const of = (slug: string): Comparison => compared.find(({ name }) => name.startsWith(`${slug} `))!.comparison
const lines = ({ groups }: Comparison): readonly Line[] => groups.flatMap((group) => group.lines)
const line = (comparison: Comparison, title: string, what: string): Line | undefined =>
  comparison.groups.find((group) => group.title === title)?.lines.find((it) => it.what === what)

describe.each(compared)('$name', ({ reconciliation, comparison }) => {
  test('every difference stands under a line, and no line under a difference that is not there', () => {
    const shown = lines(comparison).flatMap(({ raises }) => (raises === null ? [] : [raises]))
    expect([...new Set(shown)].sort()).toEqual(
      [...new Set(reconciliation.discrepancies.map(({ key }) => key))].sort(),
    )
  })

  test('every verdict opens to the question it answers, and no verdict is made up', () => {
    for (const { verdict, proof, what } of lines(comparison)) {
      expect(proof === null, what).toBe(verdict === null)
      if (proof)
        expect(
          reconciliation.outcomes.map(({ check, facet }) =>
            questionWords(check, isKeptFrom(facet) ? facet : null),
          ),
        ).toContain(proof.question)
    }
  })

  test('everything in service by the record has its part', () => {
    const serving = reconciliation.asBuilt.components.filter(({ standing }) => standing === 'in-service')
    expect(comparison.groups.length).toBeGreaterThanOrEqual(serving.length + 1)
    expect(comparison.former.length).toBe(reconciliation.asBuilt.components.length - serving.length)
  })
})

describe('what a line says', () => {
  test('record and found side by side, with the sign of the verdict between', () => {
    const capacity = line(of('agrees-by-its-uncertainty'), 'Tank', 'capacity')
    expect([capacity?.record?.text, capacity?.verdict, capacity?.found?.state]).toEqual([
      '1000 gallons',
      'agrees',
      'said',
    ])
    expect(capacity?.found?.text).toMatch(/ ± .+ gal$/)
  })

  test('a search that did not find is not an absence of a search', () => {
    const baffle = line(of('outlet-baffle-gone'), 'Outlet baffle', 'presence')
    expect([baffle?.verdict, baffle?.found?.text, baffle?.found?.state]).toEqual([
      'differs',
      'not found',
      'said',
    ])
    const trenches = line(of('outlet-baffle-gone'), 'Trenches', 'presence')
    expect([trenches?.verdict, trenches?.found?.text, trenches?.found?.state]).toEqual([
      'cannot-tell',
      'not reached: there was no time',
      'silent',
    ])
  })

  test('what was never looked for is silent, whatever the record says', () => {
    const silent = compared.flatMap(({ comparison }) =>
      lines(comparison).filter(({ found }) => found?.text === 'not inspected'),
    )
    expect(silent.length).toBeGreaterThan(0)
    for (const { found, verdict } of silent)
      expect([found?.state, verdict]).toEqual(['silent', 'cannot-tell'])
  })

  test('without an inspection there is nothing on the side of what was found', () => {
    const uninspectioned = compared.filter(({ comparison }) => comparison.inspectedOn === null)
    expect(uninspectioned.length).toBeGreaterThan(0)
    for (const { comparison } of uninspectioned) {
      for (const { found } of lines(comparison)) expect(found?.state ?? 'silent').toBe('silent')
    }
  })

  test('papers that contradict each other are both shown, and doubtful', () => {
    const doubtful = compared.flatMap(({ comparison }) =>
      lines(comparison).filter(({ record }) => record?.state === 'doubtful'),
    )
    expect(doubtful.some(({ record }) => / or /.test(record!.text) && record!.origins.length === 2)).toBe(
      true,
    )
    expect(doubtful.some(({ record }) => /^cannot be read/.test(record!.text))).toBe(true)
  })

  test('ties name their side, or say that nobody named one', () => {
    expect(line(of('tank-elsewhere'), 'Tank', 'ties')?.verdict).toBe('differs')
    expect(line(of('tie-with-no-side'), 'Tank', 'ties')?.record?.text).toBe(
      'A 22\'-6", B 34\'-0", side not said',
    )
  })
})
