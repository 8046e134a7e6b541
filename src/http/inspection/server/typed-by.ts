import type { Typed } from '../form/typed.ts'
import { answersIn } from '../form/with-step.ts'

/** What a browser sends of a form, and which of it is about the form and not about the inspection. */
export type Sent = {
  readonly step: string
  readonly to: string
  readonly draft: string | null
  readonly revision: number | null
  readonly typed: Typed
}

const LONGEST = 10_000

/** Anything can be posted: what is no text, and names that no field has, are skipped when the form is read. */
export function sentBy(body: unknown): Sent {
  const all = Object.entries(typeof body === 'object' && body !== null ? body : {}).flatMap(
    ([name, value]) =>
      // A browser sends line ends as CRLF.
      typeof value === 'string' ? [[name, value.slice(0, LONGEST).replaceAll('\r\n', '\n')] as const] : [],
  )
  const text = new Map(all)
  const revision = Number(text.get('revision'))
  return {
    step: text.get('step') ?? 'start',
    to: text.get('to') ?? 'next',
    draft: text.get('draft') || null,
    revision: Number.isInteger(revision) && revision > 0 ? revision : null,
    typed: answersIn(all),
  }
}
