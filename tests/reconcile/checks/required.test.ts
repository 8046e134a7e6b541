import { describe, expect, test } from 'vitest'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import type { Outcome } from '../../../src/reconcile/outcome.ts'
import { itemOf } from '../../../src/reconcile/status.ts'
import { itemWords } from '../../../src/words/agent/status.ts'
import { reasonWords } from '../../../src/words/reasons.ts'
import { citationWords } from '../../../src/words/rules.ts'
import { shown } from '../../../src/words/things.ts'
import { play } from '../../corpus/play.ts'
import { asked, book, outcomesOf, permit } from '../asked.ts'

/** Questions that a rule decides: whoever opens one sees what the rule asks, and where it stands. */
const RULED = ['capacity-against-code', 'absorption-against-code', 'setback', 'solids', 'metal-tank-age']
const DECIDED = ['suffices', 'falls-short', 'agrees', 'differs', 'too-close-to-call']

const answers = readStories().flatMap(({ slug, asOf, parcels }) =>
  parcels.flatMap((file) => {
    const { reconciliation } = play(file, asOf, book)
    return reconciliation.outcomes.map((outcome) => ({ slug, outcome, reconciliation }))
  }),
)
const decided = (check: string) =>
  answers.filter(({ outcome }) => outcome.check === check && DECIDED.includes(outcome.verdict))
const of = ({ exhibits }: Outcome, word: string) => exhibits.filter((it) => it.word === word)

describe.each(RULED)('%s', (check) => {
  test('shows what is on record or was found, and what is required, each with where it comes from', () => {
    expect(decided(check).length).toBeGreaterThan(0)
    for (const { slug, outcome } of decided(check)) {
      const required = of(outcome, 'required')
      expect(required.length, slug).toBeGreaterThan(0)
      for (const { from, used } of required) {
        expect(from.kind).toBe('rule')
        expect(shown(used)).toMatch(/\d/)
      }
      const held = ['stated', 'found', 'derived'].flatMap((word) => of(outcome, word))
      expect(held.length, slug).toBeGreaterThan(0)
    }
  })
})

describe('nothing is told as a code that is not known to be one', () => {
  const unread = answers.filter(({ outcome }) =>
    outcome.citations.some(({ verified }) => verified === 'from-memory'),
  )

  test('a figure cited from memory says so in its sentence', () => {
    // Solids rules may rest on a page that was read and a manual that was not.
    expect(unread.filter(({ outcome }) => DECIDED.includes(outcome.verdict)).length).toBeGreaterThan(2)
    for (const { slug, outcome } of unread)
      if (DECIDED.includes(outcome.verdict))
        expect(reasonWords(outcome), slug).toContain('source not yet verified')
  })

  test('to an agent too, who can’t open the proof', () => {
    const short = asked(
      [
        permit([{ tag: 'tank', kind: 'tank', capacity: '500 gal' }], {
          issuedOn: '1975-03-01',
          approvedOn: '1975-05-01',
        }),
      ],
      [],
    ).discrepancies.find(
      ({ outcome }) => outcome.check === 'capacity-against-code' && outcome.facet !== 'today',
    )
    expect(short?.outcome.certainty.word).toBe('likely')
    const item = itemOf({ discrepancy: short!, decided: null })
    expect(itemWords(item, 'en').says).toContain('may have required')
  })

  test('common practice among the rules says what it is about', () => {
    const practice = answers.flatMap(({ outcome }) =>
      outcome.citations.filter(({ verified }) => verified === 'common-practice'),
    )
    expect(practice.length).toBeGreaterThan(10)
    for (const it of practice) expect(citationWords(it)).toMatch(/common practice, no source, for ./)
  })
})

describe('what was found and is not on record', () => {
  const found = (kind: 'cesspool' | 'well' | 'effluent-filter') =>
    asked([permit([{ tag: 'tank', kind: 'tank' }])], [{ label: kind, kind, outcome: 'found' }])

  test('a cesspool is told as what it is, and never as a fitting', () => {
    const answer = found('cesspool')
    expect(outcomesOf(answer, 'component-on-record').map(reasonWords)).toEqual([
      'the cesspool, which receives raw sewage and disperses it into the soil, was found and no approved permit shows it',
    ])
  })

  test('a well that is called so is not explained', () => {
    expect(outcomesOf(found('well'), 'component-on-record').map(reasonWords)).toEqual([
      'the well was found and no approved permit shows it',
    ])
  })

  test('a well is looked at, a filter noted', () => {
    const severity = (kind: 'well' | 'effluent-filter') =>
      found(kind).discrepancies.find((it) => it.kind === 'component-not-on-record')?.severity
    expect([severity('well'), severity('effluent-filter')]).toEqual(['review', 'note'])
  })
})
