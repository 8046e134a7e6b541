import { CORRECTABLE, correctableField, correctionValue } from '../../../reading/entry/correction.ts'
import type { EntryIssue } from '../../../reading/entry/issues.ts'
import { entryOfText } from '../../../reading/entry/typed-text.ts'
import type { Typed } from '../parcel/decide-form.ts'

type Correction = { readonly permit: unknown; readonly field: unknown; readonly value: unknown }
type DecisionBody = { readonly action: unknown; readonly reason: string; readonly correction?: Correction }

/** The form as the body that the same operation takes from a program: what was left empty is left out. */
export function bodyOf(typed: Typed): DecisionBody {
  const text = (name: string) => typed[name]?.trim() || undefined
  const action = text('action')
  const asks = text('asks')
  return {
    action,
    reason: typed.reason?.replaceAll('\r\n', '\n').trim() ?? '',
    ...(asks === undefined || action === 'correct-record' || action === 'accept' ? {} : { asks }),
    ...(action === 'correct-record' ? { correction: correctionOf(typed, text) } : {}),
    ...(text('supersedes') === undefined ? {} : { supersedes: text('supersedes') }),
  }
}

function correctionOf(typed: Typed, text: (name: string) => string | undefined): Correction {
  const field = text('field')
  const component = text('component')
  return {
    permit: text('permit'),
    ...(component === undefined ? {} : { component }),
    field,
    value: field === 'tie' ? tieOf(text) : typedValue(field, typed.value?.trim() ?? ''),
  }
}

const tieOf = (text: (name: string) => string | undefined): unknown => ({
  a: text('tieA') ?? '',
  b: text('tieB') ?? '',
  ...(text('tieSide') === undefined ? {} : { side: text('tieSide') }),
})

function typedValue(named: string | undefined, value: string): unknown {
  const field = CORRECTABLE.find((it) => it === named)
  return field === undefined ? value : entryOfText(correctableField(field), value)
}

/** A value that cannot be read is reported with all other faults, not after they are fixed. */
export function valueFaults({ correction }: DecisionBody): readonly EntryIssue[] {
  const field = CORRECTABLE.find((it) => it === correction?.field)
  if (!correction || field === undefined) return []
  const read = correctionValue(field, correction.value, ['correction', 'value'])
  return read.ok ? [] : read.error
}

/** Which field of the form a fault's pointer means, and the fault in words for a person who sees a form. */
export function faultsOf(issues: readonly EntryIssue[]): Readonly<Record<string, string>> {
  const faults: Record<string, string> = {}
  for (const { pointer, message } of issues) {
    const field = FIELDS[pointer] ?? (pointer.startsWith('/correction/value') ? 'value' : 'form')
    const said = SAID[field] ?? `${message.charAt(0).toUpperCase()}${message.slice(1)}.`
    faults[field] ??= said
  }
  return faults
}

const FIELDS: Readonly<Record<string, string>> = {
  '/action': 'action',
  '/reason': 'reason',
  '/asks': 'asks',
  '/correction/permit': 'permit',
  '/correction/component': 'component',
  '/correction/field': 'field',
  '/correction/value': 'value',
  '/correction/value/a': 'tieA',
  '/correction/value/b': 'tieB',
  '/correction/value/side': 'tieSide',
}

const SAID: Readonly<Record<string, string>> = {
  action: 'Choose a decision.',
  field: 'Choose the value that is wrong in the record.',
}
