import { z } from 'zod'
import { type PlainDate, plainDate } from '../../base/plain-date.ts'
import { must } from '../../base/result.ts'
import { SYSTEM_USES } from '../../catalog/choices.ts'
import { line, prose } from '../../reading/entry/fields.ts'
import { findingsEntry } from '../../reading/entry/findings.ts'
import { permitEntry } from '../../reading/entry/permit.ts'
import { dateEntry } from '../../reading/entry/quantity.ts'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../reconcile/kinds.ts'
import { VERDICTS } from '../../reconcile/outcome.ts'
import { STATUS_WORDS } from '../../reconcile/status.ts'
import type { SystemGiven } from '../../reconcile/system-given.ts'
import { DECISION_ACTIONS } from '../../records/decision.ts'
import { alongside } from './alongside.ts'
import { corrected } from './corrected.ts'

/** The day on which the stories end and their answers are asked for. */
export const DEMONSTRATION_DAY: PlainDate = must(plainDate('2026-10-01'))

/** The county's invented inspection firms, by the short names that stories use. */
export const FIRMS = {
  upland: 'Upland Site Inspection',
  lowland: 'Lowland Site Inspection',
  lakeside: 'Lakeside Site Inspection',
} as const
export type FirmName = keyof typeof FIRMS
const firmNames = Object.keys(FIRMS) as [FirmName, ...FirmName[]]

const parcelNumber = z.string().regex(/^\d{2}-\d{4}-\d{4}$/, 'a parcel number of this county: 07-0412-0031')

/** Numbers that once stood for the parcel or for the land it was made from. */
const oldNumber = z.strictObject({
  number: parcelNumber,
  kind: z.enum(['renumbered', 'split', 'merged']),
  changedOn: dateEntry,
})

/** A permit as a person types it; `enteredOn` where it came into the file late; `inFileOf` where its system serves that parcel too. */
const storyPermit = alongside(
  { enteredOn: dateEntry.optional(), inFileOf: parcelNumber.optional() },
  permitEntry,
)

/** An inspection as its firm types it. Keys are written `<permit number>/<tag>`. `amends`: takes the place of the one before. */
const storyFindings = alongside(
  { firm: z.enum(firmNames), submittedOn: dateEntry, amends: z.boolean().default(false) },
  findingsEntry,
)

/** Which discrepancy is meant: the facet is needed only where kind and subject leave several. */
const target = { kind: z.enum(DISCREPANCY_KINDS), subject: line(160), facet: line(300).optional() }

const decision = z.strictObject({
  on: dateEntry,
  ...target,
  action: z.enum(DECISION_ACTIONS),
  reason: prose(2000),
  corrects: corrected.optional(),
})

const expectation = z.strictObject({
  /** Of the system whose file this is, and of the parcel where another one of its systems makes that differ. */
  status: z.enum(STATUS_WORDS),
  parcel: z.enum(STATUS_WORDS).optional(),
  discrepancies: z.array(z.strictObject({ ...target, severity: z.enum(SEVERITIES) })),
  /** Other answers worth holding, and the numbers that arithmetic by hand puts in them. */
  verdicts: z
    .array(
      z.strictObject({
        check: line(60),
        subject: line(160).optional(),
        facet: line(300).optional(),
        verdict: z.enum(VERDICTS),
        certainty: z.enum(['firm', 'likely', 'open']).optional(),
        says: z.union([line(300), z.array(line(300))]).optional(),
        wouldSettle: line(200).optional(),
      }),
    )
    .default([]),
})

/** What a reviewer says of the system whose file this is: the parcel's own in its first file, another in each that follows. */
const saidOfSystem = z.strictObject({
  use: z.enum(SYSTEM_USES),
  label: line(60).optional(),
  parcels: z.array(
    z.strictObject({
      parcel: parcelNumber,
      serves: z.boolean().default(true),
      liesOn: z.boolean().default(true),
      bedrooms: z.int().optional(),
    }),
  ),
  reason: line(300),
})

const file = {
  parcel: z.strictObject({
    number: parcelNumber,
    address: line(120),
    oldNumbers: z.array(oldNumber).default([]),
  }),
  system: saidOfSystem.optional(),
  permits: z.array(storyPermit).default([]),
  findings: z.array(storyFindings).default([]),
  decisions: z.array(decision).default([]),
  expects: expectation,
  /** What was the answer on earlier days, before a paper, an inspection or an amendment came in. */
  earlier: z.array(z.strictObject({ on: dateEntry, ...expectation.shape })).default([]),
}
const frame = { tells: prose(2000), asOf: dateEntry.default(DEMONSTRATION_DAY) }

const parcelFile = z.strictObject(file)

/** One parcel, or the parcels that one became; what they tell together. */
export const story = z.union([
  z
    .strictObject({ ...frame, ...file })
    .transform(({ tells, asOf, ...parcel }) => ({ tells, asOf, parcels: [parcel] })),
  z.strictObject({ ...frame, parcels: z.array(parcelFile).min(2, 'one parcel needs no list') }),
])

export type Story = Omit<z.output<typeof story>, 'parcels'> & {
  readonly slug: string
  readonly parcels: readonly ParcelFile[]
}
/** With what is known of its system beside its papers, where the story says something of one. */
export type ParcelFile = z.output<typeof parcelFile> & { readonly given?: SystemGiven }
export type Expectation = z.output<typeof expectation>
