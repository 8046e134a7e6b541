import type { EntryIssue } from '../../../reading/entry/issues.ts'
import { FILING_ACTS, type FilingAct } from '../../../records/filing.ts'

/** One of the forms under a permit, as it was typed. */
export type TypedFiling = {
  readonly act: FilingAct | null
  readonly version: string
  readonly reason: string
  readonly note: string
  readonly toParcel: string
  readonly into: string
}

export function typedBy(body: unknown): TypedFiling {
  const sent = (body ?? {}) as Readonly<Record<string, unknown>>
  const text = (name: string): string => (typeof sent[name] === 'string' ? (sent[name] as string) : '')
  return {
    act: FILING_ACTS.find((it) => it === text('act')) ?? null,
    version: text('version'),
    reason: text('reason'),
    note: text('note'),
    toParcel: text('toParcel'),
    into: text('into'),
  }
}

/** The body that the same operation takes from a program: what was left empty is left out. */
export function bodyOf({ act, reason, note, toParcel, into }: TypedFiling): object {
  const own = note.replaceAll('\r\n', '\n').trim()
  return {
    act,
    reason,
    ...(own === '' ? {} : { note: own }),
    ...(act === 'move' ? { toParcel } : {}),
    ...(act === 'merge' ? { into: into.trim() } : {}),
  }
}

/** Faults as whoever sees a form reads them. */
export const faultsOf = (issues: readonly EntryIssue[]): readonly string[] => [
  ...new Set(issues.map(({ pointer, message }) => SAID[pointer]?.(message) ?? `${message}.`)),
]

const SAID: { readonly [pointer: string]: (message: string) => string } = {
  '/act': () => 'Choose what to do.',
  '/reason': () => 'Choose a reason.',
  '/note': (message) => `In your own words: ${message}.`,
  '/toParcel': (message) => `Parcel: ${message}.`,
  '/system': (message) => `The parcel has several systems: ${message}.`,
  '/into': (message) => `Permit to merge into: ${message}.`,
}
