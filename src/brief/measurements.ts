import { FOUND_FIELDS } from '../catalog/catalog.ts'
import type { Fields } from '../catalog/field.ts'
import { METHODS } from '../measure/methods.ts'
import type { ReconcileInput } from '../reconcile/case.ts'
import type { Outcome } from '../reconcile/outcome.ts'
import { reconcile } from '../reconcile/reconcile.ts'
import type { FindingsRecord, FoundComponent } from '../records/findings.ts'
import type { FoundLength } from '../records/quantity.ts'
import { fieldNoun, fieldWords } from '../words/fields.ts'
import { isKeptFrom } from '../words/kept-from.ts'
import { questionWords } from '../words/questions.ts'

/** One measurement, and the questions that stay open without it, most first. */
export type WantedMeasurement = {
  readonly what: string
  readonly component: string | null
  /** The measure by its name in the findings. */
  readonly field: string
  readonly how: string
  readonly settles: readonly string[]
  /** Questions that it alone decides, each counted by what may follow from it. */
  readonly weight: number
}

const DECIDED = new Set(['agrees', 'differs', 'suffices', 'falls-short'])

type Candidate = {
  readonly what: string
  readonly component: string | null
  readonly field: string
  readonly how: string
  readonly without: (inspection: FindingsRecord) => FindingsRecord
}

/** What is asked of a component that was found; what it is made to hold is read off it, and measured by the rest. */
const MEASURED = Object.entries(FOUND_FIELDS as Fields).flatMap(([name, { section }]) =>
  section === undefined || ['shape', 'compartments', 'count', 'capacity'].includes(name) ? [] : [name],
)

/**
 * Ranks the measurements of an inspection by what each would settle: the record is compared with an inspection that finds
 * everything as recorded, then with the same inspection less one measurement; the questions that can no longer be answered
 * are those it decides. Computed, not listed, so that it follows the checks and the rules of the county.
 */
export function rankMeasurements(
  input: Omit<ReconcileInput, 'findings'>,
  inspection: FindingsRecord,
): readonly WantedMeasurement[] {
  const ask = (record: FindingsRecord) =>
    reconcile({ ...input, findings: { id: 'brief', firm: '', submittedOn: record.inspectedOn, record } })
      .outcomes
  const answered = ask(inspection).filter(({ verdict }) => DECIDED.has(verdict))
  return candidates(inspection)
    .map(({ without, ...candidate }) => {
      const left = new Set(
        ask(without(inspection))
          .filter(({ verdict }) => DECIDED.has(verdict))
          .map(questionOf),
      )
      const lost = answered.filter((outcome) => !left.has(questionOf(outcome)))
      return {
        ...candidate,
        settles: [
          ...new Set(lost.map(({ check, facet }) => questionWords(check, isKeptFrom(facet) ? facet : null))),
        ],
        weight: lost.length,
      }
    })
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight || (a.what < b.what ? -1 : 1))
}

const questionOf = ({ check, subject, facet }: Outcome): string =>
  [check, subject.key, facet ?? ''].join(' | ')

function candidates(inspection: FindingsRecord): readonly Candidate[] {
  const house: Candidate = {
    what: 'count the bedrooms',
    component: null,
    field: 'bedroomsCounted',
    how: 'count in the house, not from the listing',
    without: (from) => ({ ...from, bedroomsCounted: null }),
  }
  const parts = inspection.components.flatMap((found, index) =>
    MEASURED.flatMap((field): Candidate[] => {
      const value = found[field as keyof FoundComponent]
      if (value === null || value === undefined) return []
      const { help } = fieldWords('component', field, found.kind)
      return [
        {
          what: `${found.label}: ${fieldNoun('component', field, found.kind)}${help ? `, ${help}` : ''}`,
          component: found.key,
          field,
          how: howTaken(value),
          without: (from) => ({
            ...from,
            components: from.components.map((other, at) =>
              at === index ? { ...other, [field]: null } : other,
            ),
          }),
        },
      ]
    }),
  )
  return [house, ...parts]
}

const howTaken = (value: unknown): string => {
  if (typeof value !== 'object' || value === null) return 'look, and photograph it'
  const method = (value as Partial<FoundLength>).method
  return method ? METHODS[method].says : METHODS['ground-tape'].says
}
