import { describe, expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import type { Step } from '../../src/measure/step.ts'
import { play } from './play.ts'
import { redo } from './redo.ts'

const book = must(await loadRuleBook())
const workings = readStories().flatMap(({ slug, asOf, parcels }) =>
  parcels.flatMap((file) =>
    play(file, asOf, book).reconciliation.outcomes.flatMap(({ check, steps }) =>
      steps.map((step) => ({ slug, check, step })),
    ),
  ),
)

const shown = ({ says, formula, numbers, result }: Step): string =>
  `${says}\n  ${formula}\n  ${numbers}\n  ${result}`

test('every printed working of every story can be redone from what is printed', () => {
  const faults = workings.flatMap(({ slug, check, step }) => {
    const answer = redo(step)
    return typeof answer === 'string' ? [] : [`${slug}, ${check}: ${shown(step)}\n  ${answer.fault}`]
  })
  expect(faults).toEqual([])
})

test('most of them are sums and not look-ups, so that the test above is about something', () => {
  const redone = workings.filter(({ step }) => redo(step) === 'redone').length
  expect(redone / workings.length).toBeGreaterThan(0.85)
  expect(workings.length).toBeGreaterThan(2000)
})

/** What is taken from or added to a figure before it is held against a limit: `534 + 5.26401 < 558.6`. */
const usedU = ({ formula, numbers }: Step): readonly string[] =>
  / [+−] U\b/.test(formula) && /[<>≤≥]/.test(numbers)
    ? [...numbers.matchAll(/ [+−] ([\d.,]+)/g)].map(([, u]) => u!)
    : []

test('no uncertainty is used whose terms do not stand before it', () => {
  const faults = readStories().flatMap(({ slug, asOf, parcels }) =>
    parcels.flatMap((file) =>
      play(file, asOf, book).reconciliation.outcomes.flatMap(({ check, steps }) =>
        steps.flatMap((step, at) =>
          usedU(step)
            .filter(
              (u) =>
                u !== '0' &&
                !steps
                  .slice(0, at)
                  .some(({ formula, result }) => formula.startsWith('U = ') && result.split(/[ :]/)[0] === u),
            )
            .map((u) => `${slug}, ${check}: ${u} in ${shown(step)}`),
        ),
      ),
    ),
  )
  expect(faults).toEqual([])
})

test('no share is printed as nothing beside a figure that is something', () => {
  for (const { step } of workings) {
    expect(`${step.numbers} ${step.result}`, shown(step)).not.toMatch(/(?<![\d.])0 ?%/)
  }
})

describe('the one who redoes it sees a wrong figure', () => {
  const step = (numbers: string, result: string, formula = 'V = L × W × D'): Step => ({
    says: '',
    formula,
    numbers,
    result,
  })
  test.each([
    [step('8 ft × 4 ft × 3.5 ft', '115 cu ft')],
    [step('750 × (1 − 5 %)', '715 gal')],
    [step('909.7 − 59.5 ≥ 860', 'suffices', 'found − U ≥ minimum')],
    [step('24.33 − 24.5, 33.08 − 33', 'ΔA = -0.17 ft, ΔB = 0.8 ft')],
    [step('x = 3, y = 4, c = 10', '80.0° (sound)', 'γ = atan2(c·|y|, x·(x − c) + y²)')],
  ])('%o', (wrong) => {
    expect(redo(wrong)).toMatchObject({ fault: expect.any(String) })
  })
})
