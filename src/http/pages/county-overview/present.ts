import type { CountyFigures } from '../../../operations/counties/read-county-figures.ts'
import { SEVERITIES } from '../../../reconcile/kinds.ts'
import { STATUS_WORDS } from '../../../reconcile/status.ts'
import { DECISION_ACTIONS } from '../../../records/decision.ts'
import { AGES, type Age } from '../../../store/county-figures.ts'
import { VOICES } from '../../../words/agent/status.ts'
import { DECISION_WORDS } from '../../../words/decisions.ts'
import { capital, headed } from '../words/plain.ts'

/** A table of counts; `bar` is the figure its chart draws. */
export type CountTable = {
  readonly title: string
  readonly first: string
  readonly columns: readonly string[]
  readonly rows: readonly { readonly name: string; readonly cells: readonly number[]; readonly bar: number }[]
  /** What the bars show. */
  readonly bars: string
}

const AGE_WORDS: { readonly [A in Age]: string } = {
  'under-30-days': 'Under 30 days',
  '30-to-90-days': '30 to 90 days',
  '90-days-to-a-year': '90 days to a year',
  'over-a-year': 'Over a year',
}

export const presentFigures = (figures: CountyFigures): readonly CountTable[] => [
  statuses(figures),
  ages(figures),
  kinds(figures),
  decades(figures),
  decisions(figures),
]

const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0)

function statuses({ decades: list }: CountyFigures): CountTable {
  const of = (word: string | null) => sum(list.filter((it) => it.word === word).map(({ count }) => count))
  const words = STATUS_WORDS.map((word) => ({ name: VOICES.en.word[word], count: of(word) }))
  return {
    title: 'Parcels by status',
    first: 'Status',
    columns: ['Parcels'],
    bars: 'Parcels',
    rows: [...words, { name: 'Nothing on file', count: of(null) }].map(({ name, count }) => ({
      name,
      cells: [count],
      bar: count,
    })),
  }
}

function ages({ ages: list }: CountyFigures): CountTable {
  return {
    title: 'Open differences by age',
    first: 'Open for',
    columns: [...SEVERITIES.map(capital), 'All'],
    bars: 'All open',
    rows: AGES.map((age) => {
      const cells = SEVERITIES.map((severity) =>
        sum(list.filter((it) => it.age === age && it.severity === severity).map(({ count }) => count)),
      )
      return { name: AGE_WORDS[age], cells: [...cells, sum(cells)], bar: sum(cells) }
    }),
  }
}

function kinds({ kinds: list }: CountyFigures): CountTable {
  const names = [...new Set(list.map(({ kind }) => kind))]
  return {
    title: 'Differences by kind',
    first: 'Kind',
    columns: ['Open', 'Decided'],
    bars: 'Open',
    rows: names
      .map((kind) => {
        const own = list.filter((it) => it.kind === kind)
        const [open, decided] = [sum(own.map((it) => it.open)), sum(own.map((it) => it.decided))]
        return { name: headed(kind), cells: [open, decided], bar: open }
      })
      .sort((a, b) => b.bar - a.bar || a.name.localeCompare(b.name)),
  }
}

const REASSURING: readonly (string | null)[] = ['matches', 'resolved']
const OPEN: readonly (string | null)[] = ['under-review', 'action-needed', 'out-of-date', 'no-record']

function decades({ decades: list }: CountyFigures): CountTable {
  const names = [...new Set(list.map(({ decade }) => decade))].sort((a, b) => (a ?? 0) - (b ?? 0))
  return {
    title: 'Parcels by decade of the first approved permit',
    first: 'Decade',
    columns: ['Parcels', 'Matching or resolved', 'Open', 'Not inspected'],
    bars: 'Open',
    rows: names.map((decade) => {
      const own = list.filter((it) => it.decade === decade)
      const of = (words: readonly (string | null)[]) =>
        sum(own.filter(({ word }) => words.includes(word)).map(({ count }) => count))
      const cells = [sum(own.map(({ count }) => count)), of(REASSURING), of(OPEN), of(['not-inspected'])]
      return { name: decade === null ? 'No approved permit' : `${decade}s`, cells, bar: cells[2]! }
    }),
  }
}

const decisions = ({ decisions: list }: CountyFigures): CountTable => ({
  title: 'Decisions in force',
  first: 'Decision',
  columns: ['Decisions'],
  bars: 'Decisions',
  rows: DECISION_ACTIONS.map((action) => {
    const count = list.find((it) => it.action === action)?.count ?? 0
    return { name: DECISION_WORDS[action].done, cells: [count], bar: count }
  }),
})
