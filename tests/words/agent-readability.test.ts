import { describe, expect, test } from 'vitest'
import {
  CONDITIONS,
  LEFT_OUT_REASONS,
  LINE_DEFECTS,
  LINE_STARTS,
  NOT_REACHED_REASONS,
  SYSTEM_USES,
} from '../../src/catalog/choices.ts'
import { COMPONENT_KINDS } from '../../src/catalog/kinds.ts'
import { ACTS } from '../../src/reconcile/acts.ts'
import { OCCASIONS } from '../../src/reconcile/asked-of-code.ts'
import { BURDENS_OF_FIELD, LOADS } from '../../src/reconcile/burdens.ts'
import { CONSTRUCTIONS } from '../../src/reconcile/construction.ts'
import type { Detail, OpenPart } from '../../src/reconcile/detail.ts'
import { DEVICES } from '../../src/reconcile/devices.ts'
import { KEPT_FROM_NAMES } from '../../src/reconcile/kept-from.ts'
import { DISCREPANCY_KINDS } from '../../src/reconcile/kinds.ts'
import { OTHER_SYSTEMS } from '../../src/reconcile/other-systems.ts'
import { SIGNS } from '../../src/reconcile/reason.ts'
import type { OpenItem } from '../../src/reconcile/status.ts'
import { VERIFIED } from '../../src/rules/citation.ts'
import { STEPS } from '../../src/rules/values/protocol.ts'
import { EXISTING } from '../../src/rules/values/requirement.ts'
import { LETTER_COPY } from '../../src/words/agent/letter.ts'
import { SINCE_WORDS } from '../../src/words/agent/since.ts'
import { STATE_TOLD } from '../../src/words/agent/standing.ts'
import { VOICES } from '../../src/words/agent/status.ts'
import { SYSTEMS_VOICE, theSystem } from '../../src/words/agent/systems.ts'
import { LANGUAGES, type Language } from '../../src/words/language.ts'
import { ours } from '../../src/words/ours.ts'
import { englishGrade } from '../support/readability/english.ts'
import { SPANISH_NORMAL, spanishEase } from '../support/readability/spanish.ts'

/** All that a detail may hold. A value that it may hold and that is not tried does not compile. */
const VALUES: { readonly [F in keyof Detail]-?: readonly Detail[F][] } = {
  occasion: [null, ...OCCASIONS],
  condition: [null, ...CONDITIONS, 'cover', 'open', 'left-open', 'top', 'age'],
  neverApproved: [false, true],
  workSince: [false, true],
  source: [null, ...VERIFIED],
  sign: [null, ...SIGNS],
  built: [null, ...CONSTRUCTIONS, 'compartments', 'cesspool', 'masonry-tank', 'privy'],
  existing: [null, ...EXISTING],
  borneOut: [false, true],
  requiredBy: [null, 'rule'],
  burden: [null, ...BURDENS_OF_FIELD, ...LOADS],
  device: [null, ...DEVICES],
  step: [null, ...STEPS],
  readAgain: [false, true],
  solidsPassing: [false, true],
  against: [null, 'record', 'code'],
  nearTo: [null, ...KEPT_FROM_NAMES],
  defect: [null, ...LINE_DEFECTS],
  room: [null, 'pit', 'privy'],
  stretch: [
    null,
    { from: 31, to: null, start: null },
    ...LINE_STARTS.map((start) => ({ from: 31, to: 60, start })),
  ],
  otherSystem: [...OTHER_SYSTEMS],
  unsaid: [null, 'beside-or-instead', 'which-part'],
}
const FIELDS = Object.keys(VALUES) as readonly (keyof Detail)[]
const NOTHING = Object.fromEntries(FIELDS.map((field) => [field, VALUES[field][0]])) as unknown as Detail
const alone = FIELDS.flatMap((field) => VALUES[field].map((value) => ({ ...NOTHING, [field]: value })))
/** A sentence hangs on two of its details at most. */
const together = alone.flatMap((detail) =>
  FIELDS.flatMap((field) => VALUES[field].map((value) => ({ ...detail, [field]: value }))),
)

const TANK: OpenPart = { kind: 'tank', mark: null, onRecord: true }
const parts: readonly OpenPart[] = (['system', ...COMPONENT_KINDS] as const).flatMap((kind) =>
  [null, ours`B`].flatMap((mark) => [true, false].map((onRecord) => ({ kind, mark, onRecord }))),
)

type Grouped = ReadonlyMap<string, ReadonlySet<string>>

/**
 * Every sentence that the status and the letter can be made of. One that names a part stands beside itself with every
 * other part in it: what is measured is the sentence and not the luck of a noun.
 */
function sentencesIn(language: Language): Grouped {
  const { sentence, resolvedByWaiver, says, act, decided } = VOICES[language]
  const state = STATE_TOLD[language]
  const {
    how,
    more,
    moreReviewing,
    elsewhere: _,
    notes,
    notLookedFor,
    notReached,
    leftOut,
    ...text
  } = LETTER_COPY[language]
  const item = (kind: OpenItem['kind'], part: OpenPart, detail: Detail): OpenItem => ({
    kind,
    part,
    detail,
    state: 'county-reviewing',
    required: { by: 'rule', act: 'nothing' },
    due: null,
  })
  const { one, each, shared, onlyLiesHere, title, notInspected } = SYSTEMS_VOICE[language]
  const groups = new Map<string, Set<string>>()
  const add = (name: string, said: readonly (string | null)[]): void => {
    const sentences = said.filter((it) => it !== null).filter(isSentence)
    if (sentences.length > 0) groups.set(name, new Set([...(groups.get(name) ?? []), ...sentences]))
  }
  const single = {
    sentence,
    waived: { resolvedByWaiver },
    state,
    decided,
    how,
    since: SINCE_WORDS[language],
    systems: { one, each, shared, onlyLiesHere, title },
    text,
  }
  for (const [name, all] of Object.entries(single))
    for (const [key, it] of Object.entries(all)) add(`${name} ${key}`, [it].flat())
  for (const use of SYSTEM_USES)
    add('systems not inspected', [notInspected(theSystem({ use, mark: null }, language))])
  for (const count of [1, 2, 12]) add(`counts ${count}`, [more(count), moreReviewing(count), notes(count)])
  for (const kind of DISCREPANCY_KINDS) {
    const seen = new Map(together.map((detail) => [says[kind](item(kind, TANK, detail)), detail]))
    for (const [said, detail] of seen)
      add(
        `${kind}: ${said}`,
        parts.map((part) => says[kind](item(kind, part, detail))),
      )
  }
  for (const it of ACTS) add(it, parts.map(act[it]))
  add('not looked for', parts.map(notLookedFor))
  for (const why of NOT_REACHED_REASONS)
    add(
      `not reached: ${why}`,
      parts.map((part) => notReached(part, why)),
    )
  for (const step of STEPS)
    for (const why of [null, ...LEFT_OUT_REASONS])
      add(
        `left out: ${step} ${why}`,
        parts.map((part) => leftOut(part, step, why)),
      )
  return groups
}

/** A label is no sentence. */
const isSentence = (text: string): boolean => /[.?]$/.test(text) && text.split(' ').length > 3
const MOST_WORDS = 20

describe.each(LANGUAGES)('every sentence of a status and a letter, in %s', (language) => {
  const groups = [...sentencesIn(language)]

  test('is at grade 8 or below, or at least normal by the formula of its language', () => {
    const measured = groups.map(([name, said]) => {
      const text = [...said].join(' ')
      return { name, of: language === 'en' ? englishGrade(text) : spanishEase(text) }
    })
    const hard = measured.filter(({ of }) => (language === 'en' ? of > 8 : of < SPANISH_NORMAL))
    expect(hard.map(({ name, of }) => `${of.toFixed(1)} ${name}`)).toEqual([])
    expect(groups.length).toBeGreaterThan(100)
  })

  test('has 20 words or fewer', () => {
    const each = groups.flatMap(([, said]) => [...said].flatMap((it) => it.split(/(?<=[.?]) /)))
    expect([...new Set(each.filter((it) => it.split(' ').length > MOST_WORDS))]).toEqual([])
  })
})
