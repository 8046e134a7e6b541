import { surenessOf } from '../../../src/http/pages/documents/sureness.ts'
import { sameValue } from '../../../src/reading/assemble/choose.ts'
import type { ProposedField, ProposedPermit } from '../../../src/reading/proposal.ts'
import type { Paper } from '../make.ts'

/** One value of a paper against what was proposed for it, or a proposal for what the paper does not say. */
export type Held = {
  readonly pointer: string
  readonly kind: string | null
  readonly expected: string | number | null
  readonly field: ProposedField | null
  readonly right: boolean
}

const own = (proposal: ProposedPermit): readonly ProposedField[] => [
  ...proposal.fields,
  ...[proposal.parcelNumber, proposal.address].filter((field) => field !== null),
]

/** Proposals beside papers: each paper takes the proposal that has most of it right. */
export function heldAgainst(
  papers: readonly Paper[],
  proposals: readonly ProposedPermit[],
): { held: Held[]; found: number } {
  const left = new Set(proposals)
  let found = 0
  const held = papers.flatMap((paper): Held[] => {
    const all = [...left].map((proposal) => ({ proposal, held: onPaper(paper, proposal) }))
    const best = all.sort((a, b) => rights(b.held) - rights(a.held))[0]
    if (!best || rights(best.held) === 0) return onPaper(paper, null)
    left.delete(best.proposal)
    if (best.held.some(({ pointer, right }) => pointer === '/number' && right)) found += 1
    return best.held
  })
  // A permit that no paper has: all that it says is wrong.
  const stray = [...left].flatMap((proposal) =>
    own(proposal)
      .filter(isJudged)
      .map((field): Held => ({ pointer: field.pointer, kind: null, expected: null, field, right: false })),
  )
  return { held: [...held, ...stray], found }
}

/** How much of a paper a proposal has right. */
export const rightsOf = (paper: Paper, proposal: ProposedPermit): number => rights(onPaper(paper, proposal))

const rights = (held: readonly Held[]): number => held.filter(({ right }) => right).length
const isJudged = ({ pointer }: ProposedField): boolean =>
  !/\/(?:tag|kind|action)$|^\/reference\/wall$/.test(pointer) || pointer === '/kind'

function onPaper(paper: Paper, proposal: ProposedPermit | null): Held[] {
  const { truth, shown } = paper
  const fields = proposal ? own(proposal) : []
  const parts = proposal?.entry.components ?? []
  const used = new Set<string>()
  const expected = [...shown].sort().map((pointer): Held => {
    const match = /^\/components\/(\d+)\/(.*)$/.exec(pointer)
    const kind = match ? truth.entry.components[Number(match[1])]!.kind : null
    const at = match ? parts.findIndex((part) => part.kind === kind && part.action !== 'mention') : -1
    const own = match ? (at < 0 ? '' : `/components/${at}/${match[2]}`) : pointer
    const field = fields.find((one) => one.pointer === own) ?? null
    if (field) used.add(own)
    const value = valueAt(paper, pointer)
    return {
      pointer: match ? `/components/${kind}/${match[2]}` : pointer,
      kind,
      expected: value,
      field,
      right: field !== null && sameValue(field.value, value),
    }
  })
  const extra = fields
    .filter((field) => isJudged(field) && !used.has(field.pointer) && !isOfOldPart(field, parts))
    .map((field): Held => ({ pointer: field.pointer, kind: null, expected: null, field, right: false }))
  return [...expected, ...extra]
}

const isOfOldPart = ({ pointer }: ProposedField, parts: ProposedPermit['entry']['components']): boolean => {
  const at = /^\/components\/(\d+)\//.exec(pointer)?.[1]
  return at !== undefined && parts[Number(at)]?.action === 'mention'
}

function valueAt({ truth }: Paper, pointer: string): string | number {
  if (pointer === '/parcelNumber') return truth.parcelNumber
  if (pointer === '/address') return truth.address
  let value: unknown = truth.entry
  for (const key of pointer.split('/').slice(1)) value = (value as Record<string, unknown>)[key]
  return value as string | number
}

/** Marked: what a clerk is told was read surely. */
export const isMarked = ({ field }: Held): boolean => surenessOf(field ?? undefined) === 'high'

/** Wilson's interval at 95 %, for a share of so many. */
export function interval(part: number, whole: number): readonly [number, number] {
  if (whole === 0) return [0, 1]
  const z = 1.96
  const p = part / whole
  const middle = p + (z * z) / (2 * whole)
  const spread = z * Math.sqrt((p * (1 - p)) / whole + (z * z) / (4 * whole * whole))
  const scale = 1 + (z * z) / whole
  return [(middle - spread) / scale, (middle + spread) / scale]
}
