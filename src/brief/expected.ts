import { firstDay, lastDay, type PartialDate } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import { plausibleDimensions, type Span } from '../geometry/volume/plausible-dimensions.ts'
import { printLength } from '../measure/print/length.ts'
import type { AsBuilt, AsBuiltComponent } from '../records/as-built.ts'
import { statedValue } from '../records/claim.ts'
import type { RuleBook } from '../rules/book.ts'
import type { Citation } from '../rules/citation.ts'
import { inForce } from '../rules/in-force.ts'
import type { PlaceId } from '../rules/pack.ts'
import type { EraFact, Expectation } from '../rules/values/gathered.ts'

/** What is usual where the record is silent: marked as such, with its citations, and never mixed with the record. */
export type ExpectedLine = {
  readonly about: string
  readonly component: string | null
  readonly says: string
  readonly citations: readonly Citation[]
}

/** Expectations for the components on record, by their era and material, and for the system as a whole. */
export function expectedLines(
  asBuilt: AsBuilt,
  book: RuleBook,
  county: PlaceId,
  asOf: PlainDate,
): readonly ExpectedLine[] {
  const serving = asBuilt.components.filter(({ standing }) => standing === 'in-service')
  const facts = [
    ...gathered(inForce(book, county, 'expectations', asOf)),
    ...gathered(inForce(book, county, 'era-facts', asOf)),
  ]
  const general = facts
    .filter((item) => !serving.some(({ kind }) => kind === item.about) && fitsEra(item, firstDated(asBuilt)))
    .filter(
      (item) =>
        ['lid', 'baffle', 'pipe', 'record', 'system'].includes(item.about) ||
        (item.about === 'tank' && serving.length === 0),
    )
    .map((item) => ({ about: item.about, component: null, says: item.says, citations: item.citations }))
  return [...serving.flatMap((built) => [...dimensions(built), ...ofComponent(built, facts)]), ...general]
}

type Item = EraFact | Expectation
const gathered = (answer: { readonly state: string; readonly value?: readonly Item[] }): readonly Item[] =>
  answer.state === 'in-force' ? (answer.value ?? []) : []

function ofComponent(built: AsBuiltComponent, facts: readonly Item[]): readonly ExpectedLine[] {
  const { issuedOn, approvedOn } = built.events[0].permit
  const material = statedValue(built.measures.material)
  return facts
    .filter((item) => item.about === built.kind && fitsEra(item, issuedOn ?? approvedOn))
    .filter((item) => item.material === null || item.material === material)
    .map((item) => ({ about: item.about, component: built.key, says: item.says, citations: item.citations }))
}

/** A nominal size stands for a few usual sets of inside dimensions: what a tape should roughly read. */
function dimensions(built: AsBuiltComponent): readonly ExpectedLine[] {
  const capacity = statedValue(built.measures.capacity)
  const known = ['length', 'width', 'liquidDepth', 'diameter'] as const
  if (built.kind !== 'tank' || !capacity || known.some((name) => statedValue(built.measures[name]))) return []
  const plausible = plausibleDimensions(capacity.gal)
  if (!plausible.ok) return []
  return plausible.value.value.map(({ lengthFt, widthFt, liquidDepthFt, rule }) => ({
    about: 'tank',
    component: built.key,
    says: `a rectangular tank of ${capacity.asWritten} is about ${spanned(lengthFt)} × ${spanned(widthFt)} inside, with ${spanned(liquidDepthFt)} of liquid`,
    citations: [
      {
        authority: rule.name,
        document: rule.source,
        edition: null,
        section: null,
        covers: null,
        words: null,
        readAt: null,
        verified: rule.status,
      },
    ],
  }))
}

const spanned = ({ from, to }: Span): string => {
  const [low, high] = [toTheInch(from), toTheInch(to)]
  return low === high ? low : `${low} to ${high}`
}

const toTheInch = (ft: number): string => printLength(Math.round(ft * 12) / 12)

const firstDated = ({ permits }: AsBuilt): PartialDate | null =>
  permits[0]?.issuedOn ?? permits[0]?.approvedOn ?? null

/** An item of another time is no help; one without dates, or a record without any, always is. */
function fitsEra({ from, until }: Item, day: PartialDate | null): boolean {
  if (day === null) return true
  return (from === null || from <= firstDay(day)) && (until === null || lastDay(day) < until)
}
