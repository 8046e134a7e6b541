import type { ProposedPermit } from '../../../reading/proposal.ts'

/** What stands in the form, by the names of its fields. */
export type Typed = Readonly<Record<string, string>>

/** An entry as the form has it: one text for each value, by its pointer. */
export function typedFrom(entry: unknown, at = ''): Typed {
  if (entry === null || entry === undefined) return {}
  if (Array.isArray(entry)) {
    if (entry.every((it) => typeof it === 'string')) return entry.length > 0 ? { [at]: entry.join(', ') } : {}
    return Object.assign({}, ...entry.map((it, index) => typedFrom(it, `${at}/${index}`)))
  }
  if (typeof entry === 'object') {
    return Object.assign({}, ...Object.entries(entry).map(([key, it]) => typedFrom(it, `${at}/${key}`)))
  }
  return { [at]: String(entry) }
}

/** A form as the reading fills it in, before anyone has checked it. */
export function typedFromProposal(proposal: ProposedPermit | null): Typed {
  if (proposal === null) return {}
  const parcel = proposal.parcelNumber?.value
  return { ...(parcel === undefined ? {} : { '/parcel': String(parcel) }), ...typedFrom(proposal.entry) }
}

/** How many parts the form has: those that stand in it, and one more each time one is asked for. */
export function partsIn(typed: Typed): number {
  const named = Object.keys(typed).flatMap((name) => /^\/components\/(\d{1,3})\//.exec(name)?.[1] ?? [])
  const most = Math.max(0, ...named.map((index) => Number(index) + 1))
  return Math.min(100, most)
}

/** The fields of a form that was sent; of a field sent twice the last. Line ends are as a record has them. */
export const typedBy = (body: unknown): Typed =>
  Object.fromEntries(
    Object.entries((body ?? {}) as Readonly<Record<string, unknown>>).flatMap(([name, value]) =>
      typeof value === 'string' ? [[name, value.replaceAll('\r\n', '\n')]] : [],
    ),
  )

/** The version of the document that the form was made from; without one nothing is overwritten. */
export const versionIn = (typed: Typed): number =>
  /^\d{1,9}$/.test(typed.version ?? '') ? Number(typed.version) : -1
