import type { PlainDate } from '../../base/plain-date.ts'
import type { OperationContext } from '../../operations/context.ts'
import { decide } from '../../operations/discrepancies/decide.ts'
import { amendFindings } from '../../operations/findings/amend-findings.ts'
import { draftFindings } from '../../operations/findings/draft-findings.ts'
import { submitFindings } from '../../operations/findings/submit-findings.ts'
import { parcelAsked } from '../../operations/parcels/parcel-asked.ts'
import { enterPermit } from '../../operations/permits/enter-permit.ts'
import { type Answer, notFound } from '../../operations/refusal.ts'
import { type Actor, asService } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { discrepanciesOf, type StandingDiscrepancy } from '../../store/discrepancies.ts'
import type { Cast } from './enrol.ts'
import type { ParcelFile } from './story.ts'

/** One thing that somebody does on a day of a story. */
export type Happening = {
  readonly day: PlainDate
  readonly what: string
  readonly happen: (context: OperationContext, cast: Cast) => Promise<Answer<unknown>>
}

/** All that happens to a parcel's file, each in its own order; what has no day of its own was typed in on `typedIn`. */
export function happenings(
  file: ParcelFile,
  typedIn: PlainDate,
  system: () => string | undefined,
): readonly Happening[] {
  const { number } = file.parcel
  const permitIds = new Map<string, string>()
  const inspections: string[] = []
  /** `<permit number>/<tag>` as the service knows it. */
  const keyed = (key: string): string => {
    const at = key.indexOf('/')
    const id = permitIds.get(key.slice(0, at))
    return id === undefined ? key : `${id}${key.slice(at)}`
  }
  const permits = file.permits.map(
    ({ enteredOn, inFileOf, record }): Happening => ({
      day: enteredOn ?? typedIn,
      what: `permit ${record.number}`,
      happen: async (context, { reviewer }) => {
        const entered = await enterPermit(context, reviewer, inFileOf ?? number, record, system())
        if (entered.ok) permitIds.set(record.number, entered.value.permit.id)
        return entered
      },
    }),
  )
  const findings = file.findings.map(
    ({ firm, submittedOn, amends, record }): Happening => ({
      day: submittedOn,
      what: `the inspection of ${record.inspectedOn}`,
      happen: async (context, { firms }) => {
        const told = {
          ...record,
          components: record.components.map((found) => ({ ...found, key: found.key && keyed(found.key) })),
        }
        const before = inspections.at(-1)
        const draft =
          amends && before
            ? await amendFindings(context, firms[firm], before, told)
            : await draftFindings(context, firms[firm], number, told, system())
        if (!draft.ok) return draft
        inspections.push(draft.value.id)
        return submitFindings(context, firms[firm], draft.value.id, undefined)
      },
    }),
  )
  const decisions = file.decisions.map(
    (decision): Happening => ({
      day: decision.on,
      what: `the decision on ${decision.kind} of ${decision.subject}`,
      happen: async (context, { reviewer }) => {
        const { action, reason, corrects } = decision
        const standing = await standingOn(context, reviewer, number, system())
        const meant = standing.find(
          ({ kind, body: { outcome } }) =>
            kind === decision.kind &&
            outcome.subject.key === keyed(decision.subject) &&
            (decision.facet === undefined || outcome.facet === decision.facet),
        )
        if (!meant) return notFound(`no ${decision.kind} of ${decision.subject} stands`)
        const permit = corrects && (permitIds.get(corrects.permit) ?? corrects.permit)
        return decide(context, reviewer, {
          discrepancy: meant.id,
          version: undefined,
          action,
          reason,
          asks: null,
          correction: corrects
            ? {
                permit: permit!,
                component: corrects.component === undefined ? null : `${permit}/${corrects.component}`,
                field: corrects.field,
                value: corrects.written,
              }
            : null,
          supersedes: meant.decision,
        })
      },
    }),
  )
  return [...permits, ...findings, ...decisions]
}

const standingOn = (
  context: OperationContext,
  actor: Actor,
  number: string,
  system: string | undefined,
): Promise<readonly StandingDiscrepancy[]> =>
  transact(context.database, asService(actor), async (tx) => {
    const parcel = await parcelAsked(tx, actor.county, number)
    return parcel.ok ? discrepanciesOf(tx, actor.county, system ?? parcel.value.id) : []
  })
