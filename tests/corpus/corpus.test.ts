import { describe, expect, test } from 'vitest'
import type { PlainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import type { Expectation, ParcelFile } from '../../src/cli/demonstration/story.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import type { Reconciliation } from '../../src/reconcile/reconcile.ts'
import { isTarget, play } from './play.ts'

const book = must(await loadRuleBook())

for (const { slug, tells, asOf, parcels } of readStories()) {
  describe(slug, () => {
    for (const file of parcels) {
      const { number } = file.parcel
      for (const { on, ...expected } of file.earlier) {
        test(`${number}, as it stood on ${on}`, () => check(file, on, expected, tells))
      }
      test(number, () => check(file, asOf, file.expects, tells))
      test(`${number}, replayed, is the same to the byte`, () => {
        const [once, again] = [play(file, asOf, book), play(structuredClone(file), asOf, book)]
        expect(JSON.stringify(again)).toBe(JSON.stringify(once))
      })
    }
  })
}

function check(file: ParcelFile, on: PlainDate, expected: Expectation, tells: string): void {
  const { reconciliation, status } = play(file, on, book)
  expect(differences(reconciliation, expected), tells).toEqual([])
  for (const verdict of expected.verdicts) {
    const answers = reconciliation.outcomes.filter(
      ({ check: id, subject, facet }) =>
        id === verdict.check &&
        (verdict.subject === undefined || subject.key === verdict.subject) &&
        (verdict.facet === undefined || facet === verdict.facet),
    )
    expect(answers, `${verdict.check} has just one answer to hold`).toHaveLength(1)
    const [answer] = answers
    expect(answer!.verdict, answer!.because).toBe(verdict.verdict)
    if (verdict.certainty) expect(answer!.certainty.word, answer!.because).toBe(verdict.certainty)
    for (const says of [verdict.says ?? []].flat()) expect(answer!.because).toContain(says)
    if (verdict.wouldSettle) expect(answer!.wouldSettle?.what).toContain(verdict.wouldSettle)
  }
  expect(status.word).toBe(expected.status)
  for (const { kind, sentences, next } of reconciliation.discrepancies)
    for (const sentence of [...Object.values(sentences), next.what])
      expect(sentence.trim().length, kind).toBeGreaterThan(10)
}

/** What was expected and is not there, and what is there at action or review level (or stated) and was not expected. */
function differences({ discrepancies }: Reconciliation, expected: Expectation): readonly string[] {
  const left = [...discrepancies]
  const missing = expected.discrepancies.flatMap((wanted) => {
    const at = left.findIndex((it) => isTarget(it, wanted) && it.severity === wanted.severity)
    if (at >= 0) left.splice(at, 1)
    return at >= 0
      ? []
      : [`expected ${wanted.severity} ${wanted.kind} of ${wanted.subject} ${wanted.facet ?? ''}`]
  })
  const surplus = left
    .filter(({ severity }) => severity !== 'note')
    .map(({ severity, key, outcome }) => `not expected: ${severity} ${key}: ${outcome.because}`)
  return [...missing, ...surplus]
}
