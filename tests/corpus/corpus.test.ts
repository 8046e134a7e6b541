import { describe, expect, test } from 'vitest'
import { canonicalText } from '../../src/base/canonical.ts'
import type { PlainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import type { Expectation, ParcelFile } from '../../src/cli/demonstration/story.ts'
import { systemOf } from '../../src/cli/demonstration/systems-of-story.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { answerOf, keptForm } from '../../src/reconcile/kept.ts'
import { discrepanciesOf, type Reconciliation } from '../../src/reconcile/reconcile.ts'
import { overSystems } from '../../src/reconcile/status.ts'
import { remeasureWords } from '../../src/words/acts.ts'
import { statusWords } from '../../src/words/agent/status.ts'
import { reasonWords } from '../../src/words/reasons.ts'
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
      const { parcel: word } = file.expects
      if (word)
        test(`${number} with all its systems`, () => {
          const standings = parcels.flatMap((other) => {
            const system = systemOf(other, parcels)
            const { status, reconciliation } = play(other, asOf, book)
            const on = system.parcels.some((it) => it.parcel === number)
            return on ? [{ system, status, inspected: reconciliation.findings !== null }] : []
          })
          expect(overSystems(number, standings).word, tells).toBe(word)
        })
      test(`${number}, kept and read back, is the same answer, whatever order its papers come in`, () => {
        const { reconciliation: once } = play(file, asOf, book)
        const turned = { ...file, permits: file.permits.toReversed() }
        const kept = keptForm(once)
        expect(canonicalText(keptForm(play(turned, asOf, book).reconciliation))).toBe(canonicalText(kept))
        const { asBuilt: _, ...answer } = once
        const read = answerOf(JSON.parse(JSON.stringify(kept)))
        const bare = { ...answer, outcomes: answer.outcomes.map((it) => ({ ...it, steps: [] })) }
        expect(read).toEqual({ ...bare, discrepancies: discrepanciesOf(bare.outcomes) })
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
    expect(answer!.verdict, reasonWords(answer!)).toBe(verdict.verdict)
    if (verdict.certainty) expect(answer!.certainty.word, reasonWords(answer!)).toBe(verdict.certainty)
    for (const says of [verdict.says ?? []].flat()) expect(reasonWords(answer!)).toContain(says)
    if (verdict.wouldSettle)
      expect(answer!.wouldSettle && remeasureWords(answer!.wouldSettle.measurement)).toContain(
        verdict.wouldSettle,
      )
  }
  expect(status.word).toBe(expected.status)
  expect(statusWords(status, 'en').items).toHaveLength(status.items.length)
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
    .map(({ severity, key, outcome }) => `not expected: ${severity} ${key}: ${reasonWords(outcome)}`)
  return [...missing, ...surplus]
}
