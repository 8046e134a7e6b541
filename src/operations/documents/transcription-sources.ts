import { parsePartialDate } from '../../reading/date.ts'
import { unmarked } from '../../reading/entry/marked.ts'
import type { ProposedField, ProposedPermit } from '../../reading/proposal.ts'
import type { FiledPermit, PermitRecord } from '../../records/permit.ts'
import type { Box, Source } from '../../records/source.ts'

/** Where on the paper a person says a value stands. */
export type PlaceOnPaper = { readonly page: number; readonly box: Box | null; readonly words: string }

type Confirmed = {
  readonly document: string
  readonly by: string
  readonly record: PermitRecord
  readonly proposal: ProposedPermit | null
  readonly places: { readonly [pointer: string]: PlaceOnPaper }
}

/**
 * Where each value of a confirmed record came from. A value that is as it was proposed keeps the reading's place, words
 * and confidence; one that a person corrected keeps the place, and no confidence but theirs. Components are told apart by
 * their tags, so that taking one out moves no source to another.
 */
export function transcriptionSources({
  document,
  by,
  record,
  proposal,
  places,
}: Confirmed): FiledPermit['sources'] {
  const at = ({ page, box, words }: PlaceOnPaper, confidence: number | null): Source => ({
    kind: 'document',
    document,
    page,
    box,
    words,
    confidence,
    confirmedBy: by,
  })
  const sources: { [pointer: string]: Source } = {
    '': at({ page: proposal?.pages[0] ?? 1, box: null, words: '' }, null),
  }
  for (const field of proposal?.fields ?? []) {
    const pointer = inRecord(field.pointer, proposal, record)
    const value = pointer === null ? undefined : valueAt(record, pointer)
    if (pointer === null || value === undefined || value === null) continue
    sources[pointer] = at(field, isAsProposed(value, field) ? field.confidence : null)
  }
  for (const [pointer, place] of Object.entries(places)) sources[pointer] = at(place, null)
  return withWholes(sources)
}

/** The pointer of a proposed field in the record as confirmed; null where its component was taken out. */
function inRecord(pointer: string, proposal: ProposedPermit | null, record: PermitRecord): string | null {
  const match = /^\/components\/(\d+)(\/.*)?$/.exec(pointer)
  if (!match) return pointer
  const tag = proposal?.entry.components[Number(match[1])]?.tag
  const index = record.components.findIndex((component) => component.tag === tag)
  return index < 0 ? null : `/components/${index}${match[2] ?? ''}`
}

function valueAt(record: PermitRecord, pointer: string): unknown {
  return pointer
    .split('/')
    .slice(1)
    .reduce<unknown>(
      (value, key) =>
        typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined,
      record,
    )
}

function isAsProposed(value: unknown, { value: proposed }: ProposedField): boolean {
  if (typeof value === 'object' && value !== null && 'asWritten' in value) {
    return unmarked(String(value.asWritten)).text === String(proposed).trim()
  }
  if (value === proposed || String(value) === String(proposed)) return true
  const date = parsePartialDate(String(proposed))
  return date.ok && date.value === value
}

/** Ties and corners are asked for whole: each has the source of the first of its parts. */
function withWholes(sources: { [pointer: string]: Source }): FiledPermit['sources'] {
  const whole: { [pointer: string]: Source } = {}
  for (const [pointer, source] of Object.entries(sources)) {
    const parent = /^(\/reference|\/components\/\d+\/tie)\/[^/]+$/.exec(pointer)?.[1]
    if (parent && !(parent in sources)) whole[parent] ??= source
  }
  return { ...sources, ...whole }
}
