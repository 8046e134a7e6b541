import { type Lesson, lessonFrom } from '../../src/reading/family/lesson.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import type { EntryDraft } from '../../src/reading/proposal.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import type { Paper } from './make.ts'
import { QUILLBACK } from './quillback.ts'

/** The lesson of a person who confirms what a paper shows, with what was proposed before them. */
export function lessonOf({ truth, shown }: Paper, page: PageWords): Lesson {
  const leaf = `${truth.parcelNumber} ${truth.entry.number}`
  const has = (pointer: string): boolean => shown.has(pointer)
  const kept = (value: object, at: string): Record<string, unknown> =>
    Object.fromEntries(
      Object.entries(value).flatMap(([key, inner]) => {
        const pointer = `${at}/${key}`
        if (typeof inner === 'object') return [[key, kept(inner, pointer)]]
        return has(pointer) || key === 'tag' || (key === 'kind' && at !== '') ? [[key, inner]] : []
      }),
    )
  const { components, ...own } = truth.entry
  const entry = {
    ...kept(own, ''),
    components: components.map((component, index) => kept(component, `/components/${index}`)),
  } as unknown as EntryDraft
  const [proposal] = proposePermits([page], QUILLBACK)
  const found = [...(proposal?.fields ?? []), ...(proposal?.parcelNumber ? [proposal.parcelNumber] : [])]
  const places = Object.fromEntries(
    found
      .filter(({ how }) => how !== 'tick')
      .flatMap((field) => {
        const at = /^\/components\/(\d+)\/(.*)$/.exec(field.pointer)
        if (!at) return [[field.pointer, field]]
        const { kind } = proposal!.entry.components[Number(at[1])]!
        const index = components.findIndex((component) => component.kind === kind)
        return index < 0 ? [] : [[`/components/${index}/${at[2]}`, field]]
      }),
  )
  const paper = {
    parcelNumber: has('/parcelNumber') ? truth.parcelNumber : null,
    address: has('/address') ? truth.address : null,
  }
  return lessonFrom(leaf, [page], entry, paper, places)
}
