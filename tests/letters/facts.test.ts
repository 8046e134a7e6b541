import { describe, expect, test } from 'vitest'
import { changesSince, type LetterFacts } from '../../src/letters/facts.ts'

const facts: LetterFacts = {
  permits: [
    { id: 'a', revision: 1 },
    { id: 'b', revision: 2 },
  ],
  corrections: ['d1'],
  findings: { id: 'f1' },
  differences: [
    { key: 'x', evidence: 'e1', decided: null },
    { key: 'y', evidence: 'e2', decided: 'accept' },
  ],
  word: 'under-review',
}

describe('what has come in since', () => {
  test('is nothing while nothing has, in whatever order things come back', () => {
    expect(changesSince(facts, structuredClone(facts))).toEqual([])
    const turned = {
      ...facts,
      permits: facts.permits.toReversed(),
      differences: facts.differences!.toReversed(),
    }
    expect(changesSince(facts, turned)).toEqual([])
    const keys = { ...facts, permits: facts.permits.map(({ id, revision }) => ({ revision, id })) }
    expect(changesSince(facts, keys)).toEqual([])
  })

  test.each<[string, Partial<LetterFacts>, string]>([
    ['a permit', { permits: [...facts.permits, { id: 'c', revision: 1 }] }, 'permit'],
    ['a revision', { permits: [{ id: 'a', revision: 2 }, facts.permits[1]!] }, 'permit'],
    ['a correction', { corrections: [] }, 'correction'],
    ['findings', { findings: { id: 'f2' } }, 'findings'],
    [
      'a decision',
      { differences: [{ ...facts.differences![0]!, decided: 'accept' }, facts.differences![1]!] },
      'difference',
    ],
    [
      'evidence',
      { differences: [{ ...facts.differences![0]!, evidence: 'e3' }, facts.differences![1]!] },
      'difference',
    ],
    ['another status', { word: 'matches' }, 'status'],
  ])('is told: %s', (_, over, words) => {
    const since = changesSince(facts, { ...facts, ...over })
    expect(since).toEqual([words])
  })

  test('leaves out what the letter does not speak of', () => {
    const brief: LetterFacts = { ...facts, findings: null, differences: null, word: null }
    expect(changesSince(brief, { ...facts, findings: { id: 'f9' }, word: 'matches' })).toEqual([])
  })
})
