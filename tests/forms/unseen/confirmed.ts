import { type Lesson, lessonFrom } from '../../../src/reading/family/lesson.ts'
import type { PageWords } from '../../../src/reading/page-words.ts'
import type { EntryDraft, ProposedPermit } from '../../../src/reading/proposal.ts'
import type { Paper } from '../make.ts'
import { rightsOf } from './held.ts'

/** What a person sends who confirms all that a page's papers show: a lesson for each, with the places that were read. */
export function lessonsOf(
  papers: readonly Paper[],
  page: PageWords,
  proposals: readonly ProposedPermit[],
): Lesson[] {
  const leaf = papers.map(({ truth }) => truth.entry.number).join(' ')
  const left = new Set(proposals)
  return papers.map((paper) => {
    const proposal = [...left].sort((a, b) => rightsOf(paper, b) - rightsOf(paper, a))[0]
    if (proposal) left.delete(proposal)
    return confirmed(leaf, paper, page, proposal)
  })
}

function confirmed(
  leaf: string,
  { truth, shown }: Paper,
  page: PageWords,
  proposal: ProposedPermit | undefined,
): Lesson {
  const { components, ...own } = truth.entry
  const kept = (value: object, at: string): Record<string, unknown> =>
    Object.fromEntries(
      Object.entries(value).flatMap(([key, inner]) => {
        const pointer = `${at}/${key}`
        if (typeof inner === 'object') return [[key, kept(inner, pointer)]]
        return shown.has(pointer) || key === 'tag' || (key === 'kind' && at !== '') ? [[key, inner]] : []
      }),
    )
  const entry = {
    ...kept(own, ''),
    components: components.map((component, index) => kept(component, `/components/${index}`)),
  } as unknown as EntryDraft
  const found = [...(proposal?.fields ?? []), ...(proposal?.parcelNumber ? [proposal.parcelNumber] : [])]
  const places = Object.fromEntries(
    found
      .filter(({ how }) => how !== 'tick')
      .flatMap((field) => {
        const at = /^\/components\/(\d+)\/(.*)$/.exec(field.pointer)
        if (!at) return [[field.pointer, field]]
        const kind = proposal?.entry.components[Number(at[1])]?.kind
        const index = components.findIndex((component) => component.kind === kind)
        return index < 0 ? [] : [[`/components/${index}/${at[2]}`, field]]
      }),
  )
  const paper = {
    parcelNumber: shown.has('/parcelNumber') ? truth.parcelNumber : null,
    address: shown.has('/address') ? truth.address : null,
  }
  return lessonFrom(leaf, [page], entry, paper, places)
}
