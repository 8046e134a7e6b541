import type { Typed } from '../parcel/decide-form.ts'

const COUNTS = ['bedrooms', 'compartments', 'count', 'designFlowGpd', 'percRateMpi']
const WORDS = ['material', 'shape']

/** The form as the body that the same operation takes from a program: what was left empty is left out. */
export function bodyOf(typed: Typed): unknown {
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

function correctionOf(typed: Typed, text: (name: string) => string | undefined): unknown {
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

/** A count typed as digits is a number; a word of the trade is written with a hyphen in the record. */
function typedValue(field: string | undefined, value: string): unknown {
  if (field !== undefined && COUNTS.includes(field) && /^\d+(\.\d+)?$/.test(value)) return Number(value)
  return field !== undefined && WORDS.includes(field) ? value.toLowerCase().replace(/\s+/g, '-') : value
}

/** Which field of the form a fault's pointer means, and the fault in words for a person who sees a form. */
export function faultsOf(
  issues: readonly { readonly pointer: string; readonly message: string }[],
): Readonly<Record<string, string>> {
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
  action: 'Choose what is to be done.',
  field: 'Choose which value the record has wrong.',
}
