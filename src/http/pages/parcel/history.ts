import { dayOf } from '../../../base/plain-date.ts'
import { LETTER_TITLES } from '../../../letters/content/frame.ts'
import type { ParcelFileRead } from '../../../operations/parcels/read-parcel-file.ts'
import type { ChangeNoticed } from '../../../store/discrepancy-changes.ts'
import type { Letter } from '../../../store/letters.ts'
import type { PermitOnFile } from '../../../store/permits.ts'
import type { Occasion, ReconciliationInList } from '../../../store/reconciliations.ts'
import { VOICES } from '../../../words/agent/status.ts'
import { reasonWords } from '../../../words/reasons.ts'
import { titleOf } from '../../../words/titles.ts'
import { dayInWords } from '../words/dates.ts'
import { plain } from '../words/plain.ts'
import { presentDecision } from './difference.ts'

export type HappenedKind = 'paper' | 'inspection' | 'comparison' | 'decision' | 'letter'

/** Something that happened to the parcel or its file, at its place in the line of events. */
export type Happened = {
  readonly on: string
  readonly kind: HappenedKind
  readonly says: string
  readonly more: readonly string[]
  /** A reconciliation that can be looked at as it was. */
  readonly reconciliation: string | null
}

type Placed = Happened & { readonly at: number }

const OCCASION_WORDS: { readonly [O in Occasion]: string } = {
  'permit-entered': 'a permit was added',
  'permit-corrected': 'a permit was corrected',
  'permit-transcribed': 'a permit was confirmed from a document',
  'permit-refiled': 'a permit was moved, voided or merged, or that was undone',
  'findings-submitted': 'an inspection was submitted',
  'findings-amended': 'an inspection was amended',
  'record-corrected': 'a decision corrected the record',
  'time-passed': 'time had passed',
  'asked-for': 'someone requested it',
  'rules-changed': 'the rules had changed',
  'engine-changed': 'Asfound was updated',
  'system-changed': 'a system was added, or what one serves was changed',
  imported: 'an import added or changed something',
}

/** The line of events, oldest first: permits on their own dates, late paper, inspections, comparisons, decisions. */
export function presentHistory(
  { file, reconciliations, changes, decisions, names }: ParcelFileRead,
  letters: readonly Letter[],
): readonly Happened[] {
  const inspections = file?.findings.filter(({ state }) => state === 'submitted') ?? []
  const firstInspection = inspections.map(({ record }) => record.inspectedOn).sort()[0]
  const placed: Placed[] = [
    ...(file?.permits ?? []).flatMap((permit) => ofPermit(permit, firstInspection)),
    ...inspections.map(
      ({ record, firmName, submittedAt, amends, amendedBy }): Placed => ({
        ...at(record.inspectedOn, 1),
        kind: 'inspection',
        says: `Inspection${firmName ? ` by ${firmName}` : ''}`,
        more: [
          ...(submittedAt ? [`submitted ${dayInWords(dayOf(submittedAt))}`] : []),
          ...(amends ? ['replaces an earlier inspection'] : []),
          ...(amendedBy ? ['amended later'] : []),
        ],
      }),
    ),
    ...reconciliations.map((it) => ofReconciliation(it, changes)),
    ...decisions.map((decision): Placed => {
      const { done, reason, set, by } = presentDecision(decision, names)
      return {
        ...atInstant(decision.decidedAt),
        kind: 'decision',
        says: `${done}: ${reason}`,
        more: [...(set ? [set] : []), by, ...(decision.supersededBy ? ['replaced later'] : [])],
      }
    }),
  ]
  const all = [...placed, ...letters.map(ofLetter)]
  return all.sort((a, b) => a.at - b.at).map(({ at: _, ...happened }) => happened)
}

const at = (on: string, order: number) => ({
  on,
  at: Date.parse(`${on}T00:00:00Z`) + order,
  reconciliation: null,
})
const atInstant = (instant: Date) => ({
  on: dayOf(instant) as string,
  at: instant.getTime(),
  reconciliation: null,
})

function ofPermit(
  { record, enteredAt }: PermitOnFile,
  firstInspection: string | undefined,
): readonly Placed[] {
  const entered = dayOf(enteredAt)
  const on = record.approvedOn ?? record.issuedOn
  const late = firstInspection !== undefined && entered > firstInspection
  const paper: Placed[] = on
    ? [
        {
          ...at(on, 0),
          kind: 'paper',
          says: `Permit ${record.number} (${record.kind}) ${record.approvedOn ? 'approved' : 'issued, no final approval on file'}`,
          more: [workInWords(record.components), ...(late ? [] : [`on file since ${dayInWords(entered)}`])],
        },
      ]
    : []
  const entry: Placed = {
    ...atInstant(enteredAt),
    kind: 'paper',
    says: `Permit ${record.number} was added to the file${late ? ' after the inspection' : ''}`,
    more: on ? [] : [workInWords(record.components)],
  }
  return late || !on ? [...paper, entry] : paper
}

function workInWords(components: PermitOnFile['record']['components']): string {
  const verbs = [...new Set(components.map(({ action }) => action))]
  const parts = verbs.map((verb) => {
    const tags = components.filter(({ action }) => action === verb).map(({ tag }) => tag)
    return `${plain(verb)} ${tags.join(', ')}`
  })
  return parts.length === 0 ? 'lists no components' : parts.join('; ')
}

function ofReconciliation(
  { id, occasion, madeAt }: ReconciliationInList,
  changes: readonly ChangeNoticed[],
): Placed {
  const own = changes.filter(({ reconciliation }) => reconciliation === id)
  return {
    ...atInstant(madeAt),
    kind: 'comparison',
    says: `Compared, because ${OCCASION_WORDS[occasion]}${own.length === 0 ? ': nothing changed' : ''}`,
    more: own.map(changeInWords),
    reconciliation: id,
  }
}

const ofLetter = ({ kind, number, word, issuedAt, withdrawn }: Letter): Placed => ({
  ...atInstant(issuedAt),
  kind: 'letter',
  says: `${LETTER_TITLES[kind]} ${number}: ${VOICES.en.word[word]}`,
  more: withdrawn ? [`withdrawn ${dayInWords(dayOf(withdrawn.at))}: ${withdrawn.reason}`] : [],
})

function changeInWords({ change, body }: ChangeNoticed): string {
  const what = `${titleOf(body.kind, body.about)}, ${body.about.label}`
  switch (change) {
    case 'appeared':
      return `New: ${what}`
    case 'returned':
      return `Back: ${what}`
    case 'vanished':
      return `Gone: ${what}`
    case 'changed':
      return `Changed: ${what}${body.after ? ` (now: ${reasonWords({ subject: body.about, reason: body.after })})` : ''}`
  }
}

/** What a kind of event is called beside its line. */
export const HAPPENED_WORDS: { readonly [K in HappenedKind]: string } = {
  paper: 'Permit',
  inspection: 'Inspection',
  comparison: 'Comparison',
  decision: 'Decision',
  letter: 'Letter',
}
