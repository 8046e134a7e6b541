import { z } from 'zod'

/**
 * How a value came to be in a pack. `read`: the source's own text was read, the whole section relied on. `second-hand`: a
 * page repeating the source was read, or a copy that breaks off before the section ends. `from-memory`: source not yet verified, and it must say so wherever it shows. `common-practice`: a fact of
 * the trade, or a convention of ours, with no source at all.
 */
export const VERIFIED = ['read', 'second-hand', 'from-memory', 'common-practice'] as const
export type Verified = (typeof VERIFIED)[number]

/**
 * Where a value was printed. `covers`: the part of the value that it vouches for, where several share the work. `words` are the few words
 * relied on, quoted; null when only figures were relied on.
 */
export type Citation = {
  readonly authority: string
  readonly document: string
  readonly edition: string | null
  readonly section: string | null
  readonly covers: string | null
  readonly words: string | null
  readonly readAt: string | null
  readonly verified: Verified
}

const text = z.string().trim().min(1)
const optional = text.nullish().transform((value) => value ?? null)

/** What is written as `read-at` for a copy that has no address anyone could open. */
export const FILE_COPY = 'file copy, no stable address'

const readAt = text.refine((at) => at === FILE_COPY || URL.canParse(at), {
  error: `must be an address (https://…) or '${FILE_COPY}'`,
})

const sourced = z.strictObject({
  authority: text,
  document: text,
  edition: optional,
  section: optional,
  covers: optional,
  words: optional,
  readAt,
  verified: z.enum(['read', 'second-hand']),
})

const remembered = z
  .strictObject({
    authority: text,
    document: text,
    edition: optional,
    section: optional,
    covers: optional,
    verified: z.literal('from-memory'),
  })
  .transform((it) => ({ ...it, words: null, readAt: null }))

const practiced = z
  .strictObject({ covers: optional, words: optional, verified: z.literal('common-practice') })
  .transform((it) => ({
    ...it,
    authority: 'common practice',
    document: 'no source',
    edition: null,
    section: null,
    readAt: null,
  }))

/** A value from memory can't name where it was read; common practice can't name an authority. */
export const citation: z.ZodType<Citation> = z.discriminatedUnion('verified', [
  sourced,
  remembered,
  practiced,
])

/** The least sure status of several: what an answer that rests on all of them must be shown as. */
export function weakest(citations: readonly Citation[]): Verified {
  const worst = citations.reduce((rank, it) => Math.max(rank, VERIFIED.indexOf(it.verified)), 0)
  return VERIFIED[worst] ?? 'common-practice'
}

/** One line for a page, a letter or a step of working; says so when nobody has read the source. */
export function citeInWords(it: Citation): string {
  const of = it.covers === null ? '' : `, for ${it.covers}`
  if (it.verified === 'common-practice') return `common practice, no source${of}`
  const place = [it.authority, it.document, it.edition, it.section].filter((part) => part !== null).join(', ')
  if (it.verified === 'from-memory') return `${place}${of} (from memory, not read)`
  return it.verified === 'second-hand' ? `${place}${of} (second-hand)` : `${place}${of}`
}

/** What has to stand beside a figure, so that nobody takes for a code what nobody has read or nobody wrote. */
export function unread({ citations }: Cited<unknown>): string {
  switch (weakest(citations)) {
    case 'from-memory':
      return ' (source not yet verified)'
    case 'common-practice':
      return ' (common practice, no code)'
    case 'second-hand':
    case 'read':
      return ''
  }
}

/** A value with what it rests on. Every in-force answer is one. */
export type Cited<Value> = { readonly value: Value; readonly citations: readonly Citation[] }

export const citedInWords = ({ citations }: Cited<unknown>): string => citations.map(citeInWords).join('; ')
