import { fieldAt } from '../../../catalog/catalog.ts'
import { CORRECTABLE, type Correctable } from '../../../reading/entry/correction.ts'
import type { AsBuilt } from '../../../records/as-built.ts'
import { DECISION_ACTIONS, type DecisionAction, isWaiver } from '../../../records/decision.ts'
import type { StandingDiscrepancy } from '../../../store/discrepancies.ts'
import { fieldNoun } from '../../../words/fields.ts'

/** What a person has typed into the form, by the names of its fields. */
export type Typed = Readonly<Record<string, string>>
/** What is wrong with it, by field. */
export type Faults = Readonly<Record<string, string>>

/** A form that came back. */
export type Returned = {
  readonly discrepancy: string
  readonly typed: Typed
  readonly faults: Faults
  /** Said above the form: it changed meanwhile, someone else decided. */
  readonly notice: string | null
}

export type Choice = { readonly value: string; readonly name: string }

/** The form with which a reviewer decides about one discrepancy. */
export type DecideForm = {
  readonly discrepancy: string
  readonly version: number
  /** The decision in force, to be replaced knowingly. */
  readonly supersedes: string | null
  readonly actions: readonly DecisionAction[]
  readonly typed: Typed
  readonly faults: Faults
  readonly notice: string | null
  readonly permits: readonly Choice[]
  readonly components: readonly Choice[]
  readonly fields: readonly Choice[]
}

/** The value that a check compares, where one field says it all: what a correction will most likely change. */
const FIELD_OF_CHECK: Readonly<Record<string, Correctable>> = {
  'capacity-against-record': 'capacity',
  material: 'material',
  'line-material': 'material',
  position: 'tie',
  bedrooms: 'bedrooms',
  'type-of-component': 'shape',
}

const nameOf = (field: Correctable): string =>
  fieldNoun(fieldAt('component', field) ? 'component' : 'permit', field)

export function presentDecideForm(
  it: StandingDiscrepancy,
  asBuilt: AsBuilt,
  returned: Returned | null,
): DecideForm {
  const own = returned?.discrepancy === it.id ? returned : null
  const { subject, check } = it.body.outcome
  const component = asBuilt.components.find(({ key }) => key === subject.key)
  const permit = component?.events[0].permit.id ?? asBuilt.permits[0]?.id ?? ''
  const likely = { component: component?.key ?? '', permit, field: FIELD_OF_CHECK[check] ?? '' }
  return {
    discrepancy: it.id,
    version: it.revision,
    supersedes: it.decision,
    actions: DECISION_ACTIONS.filter((action) =>
      it.kind === 'inspection-incomplete'
        ? isWaiver(action) || action === 'ask-remeasurement'
        : !isWaiver(action),
    ),
    typed: { ...likely, ...own?.typed },
    faults: own?.faults ?? {},
    notice: own?.notice ?? null,
    permits: asBuilt.permits.map(({ id, number }) => ({ value: id, name: number })),
    components: [
      { value: '', name: 'the whole system' },
      ...asBuilt.components.map(({ key, label }) => ({ value: key, name: label })),
    ],
    fields: CORRECTABLE.map((field) => ({ value: field, name: nameOf(field) })),
  }
}
