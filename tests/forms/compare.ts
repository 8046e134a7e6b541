import { sameValue } from '../../src/reading/assemble/choose.ts'
import type { EntryDraft, ProposedPermit } from '../../src/reading/proposal.ts'
import type { Paper } from './make.ts'

export type Compared = {
  readonly pointer: string
  readonly expected: string | number
  readonly proposed: string | number | null
  readonly confidence: number
  readonly readAlike: boolean | null
  readonly right: boolean
}

/** A component of the truth is told by its kind: the order on paper is the form's own. */
function mapped(pointer: string, truth: EntryDraft, proposed: EntryDraft): string {
  const match = /^\/components\/(\d+)\/(.*)$/.exec(pointer)
  if (!match) return pointer
  const kind = truth.components[Number(match[1])]!.kind
  const nth = truth.components
    .slice(0, Number(match[1]))
    .filter((component) => component.kind === kind).length
  const index = proposed.components.flatMap((component, at) => (component.kind === kind ? [at] : []))[nth]
  return index === undefined ? '' : `/components/${index}/${match[2]}`
}

/** Each value that a form shows, against what was proposed for it. */
export function compare(paper: Paper, proposal: ProposedPermit | undefined): Compared[] {
  const { truth } = paper
  return [...paper.shown].sort().map((pointer): Compared => {
    const at = proposal ? mapped(pointer, truth.entry, proposal.entry) : ''
    const field =
      pointer === '/parcelNumber'
        ? proposal?.parcelNumber
        : pointer === '/address'
          ? proposal?.address
          : proposal?.fields.find((known) => known.pointer === at)
    const expected = valueAt(paper, pointer)
    return {
      pointer,
      expected,
      proposed: field?.value ?? null,
      confidence: field?.confidence ?? 0,
      readAlike: field?.readAlike ?? null,
      right: field !== null && field !== undefined && sameValue(field.value, expected),
    }
  })
}

function valueAt({ truth }: Paper, pointer: string): string | number {
  if (pointer === '/parcelNumber') return truth.parcelNumber
  if (pointer === '/address') return truth.address
  let value: unknown = truth.entry
  for (const key of pointer.split('/').slice(1)) value = (value as Record<string, unknown>)[key]
  return value as string | number
}
