import { rowsOf } from '../layout/rows.ts'
import { excerpt } from '../layout/strip.ts'
import { unitsOf } from '../layout/units.ts'
import type { PageWords, Word } from '../page-words.ts'
import type { Mentioned, PageReadings, Statement } from '../statement.ts'
import { cornersIn } from './corners.ts'
import { described } from './describe.ts'
import { inlineValues } from './inline.ts'
import type { ReadingContext } from './read-value.ts'
import { slottedValues } from './slots.ts'
import { withStackedLabels } from './stacked.ts'
import { type SubjectAt, subjectFinder } from './subjects.ts'
import { tablesIn } from './tables.ts'
import { orderOf, soleMention, type TextUnit, textUnit } from './text-unit.ts'
import { type Tick, ticksIn } from './ticks.ts'

/** Words of a rule in running text: what follows is what must be, not what is. */
const RULE_SENTENCE = /\b(?:shall|must|required to|not less than|no less than|at least|minimum of)\b/i

/** Everything one page says, by one reader's words, wherever on the page it stands. */
export function readPage(page: PageWords, words: readonly Word[], context: ReadingContext): PageReadings {
  const { ticks, spent } = ticksIn(rowsOf(page, words), context.misread)
  const rows = rowsOf(page, spent.size === 0 ? words : withoutSpent(words, spent))
  const single = unitsOf(rows).map((unit) => textUnit(unit, context.misread))
  const all = withStackedLabels(single, context.misread)
  const tables = tablesIn(all, context)
  const units = all.filter(
    (unit) =>
      !tables.rows.has(unit.row) &&
      !(unit.prose && RULE_SENTENCE.test(unit.strip.text) && !/\d{2,}-\d/.test(unit.strip.text)),
  )
  const subjectAt = subjectFinder(units)
  const corners = units.flatMap((unit) => cornersIn(unit, context.misread))
  const labeled = units.flatMap((unit) => inlineValues(unit, subjectAt, context))
  const inline = labeled.flatMap(({ statement }) => statement ?? [])
  const slotted = slottedValues(labeled, units, subjectAt, context)
  const free = units.flatMap((unit) => described(unit, subjectAt, context))
  return {
    statements: [
      ...corners,
      ...inline,
      ...slotted,
      ...free,
      ...tables.statements,
      ...ticks.flatMap((tick) => tickStatement(tick, units, subjectAt)),
    ],
    mentions: [...units.flatMap(mentionsIn), ...tables.mentions, ...ticks.flatMap(tickMention)],
  }
}

/** Spent words are told by their place, for rows are built of copies with the leaders taken off. */
function withoutSpent(words: readonly Word[], spent: ReadonlySet<Word>): Word[] {
  const places = new Set([...spent].map(({ box }) => `${box.x},${box.y}`))
  return words.filter(({ box }) => !places.has(`${box.x},${box.y}`))
}

function tickStatement(tick: Tick, units: readonly TextUnit[], subjectAt: SubjectAt): Statement[] {
  const { sense } = tick
  const base = {
    ordinal: null,
    excerpt: tick.excerpt,
    fit: 0.95 * tick.likeness,
    how: 'tick' as const,
    doubts: [],
    order: tick.excerpt.page * 1e6 + tick.row * 1e3,
  }
  if (sense.is === 'work') return [{ ...base, ask: 'kind', kind: null, value: sense.kind }]
  if (sense.is === 'mention') return []
  const beside = units.findLast(
    ({ box }) => box.y < tick.excerpt.box.y + tick.excerpt.box.h && box.x < tick.excerpt.box.x,
  )
  const subject = beside
    ? subjectAt({ ...beside, prose: false, place: beside.place + 1, groups: [] }, 0)
    : null
  if (!subject) return []
  const value = sense.is === 'material' ? sense.material : sense.shape
  return [{ ...base, ask: sense.is, kind: subject.kind, ordinal: subject.ordinal, value }]
}

const tickMention = ({ sense, excerpt: shown, row, likeness }: Tick): Mentioned[] =>
  sense.is === 'mention'
    ? [
        {
          kind: sense.kind,
          ordinal: null,
          excerpt: shown,
          order: shown.page * 1e6 + row * 1e3,
          as: 'tick',
          likeness,
        },
      ]
    : []

function mentionsIn(unit: TextUnit): Mentioned[] {
  const sole = unit.prose ? undefined : soleMention(unit)
  return unit.groups.flatMap((group): Mentioned[] => {
    const kind = group.is === 'mention' || group.is === 'label' ? group.kind : null
    if (kind === null || group.is === 'decoy') return []
    return [
      {
        kind,
        ordinal: group.is === 'mention' ? group.ordinal : null,
        excerpt: excerpt(unit.strip, group.start, group.end),
        order: orderOf(unit, group.start),
        as: sole ? 'heading' : 'passing',
        likeness: group.likeness,
      },
    ]
  })
}
