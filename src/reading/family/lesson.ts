import type { ComponentKind } from '../../catalog/kinds.ts'
import type { Box } from '../../records/source.ts'
import type { Ask } from '../asks.ts'
import type { PageWords } from '../page-words.ts'
import type { EntryDraft } from '../proposal.ts'

/** One value that a person confirmed, as it was typed, and where the reading had found it if it had. */
export type Confirmed = {
  readonly ask: Ask
  readonly kind: ComponentKind | null
  readonly value: string | number
  readonly place: { readonly page: number; readonly box: Box } | null
}

/** A permit on paper and what a person confirmed of it: what a form is learned from. */
export type Lesson = {
  /** The paper and its first page: permits of a register share one. */
  readonly leaf: string
  readonly pages: readonly PageWords[]
  readonly values: readonly Confirmed[]
}

const PERMIT_PLACES: readonly (readonly [pointer: string, ask: Ask])[] = [
  ['number', 'number'],
  ['kind', 'kind'],
  ['issuedOn', 'issuedOn'],
  ['approvedOn', 'approvedOn'],
  ['bedrooms', 'bedrooms'],
  ['designFlowGpd', 'designFlowGpd'],
  ['percRateMpi', 'percRateMpi'],
  ['soilTexture', 'soilTexture'],
  ['reference/a', 'cornerA'],
  ['reference/b', 'cornerB'],
  ['reference/baseline', 'baseline'],
  ['remarks', 'remarks'],
]
const COMPONENT_PLACES: readonly (readonly [pointer: string, ask: Ask])[] = [
  ...(
    [
      'capacity',
      'length',
      'width',
      'diameter',
      'liquidDepth',
      'insideHeight',
      'wallThickness',
      'effectiveDepth',
      'depthToTop',
      'pipeDiameter',
      'compartments',
      'count',
      'material',
      'shape',
    ] as const
  ).map((name) => [name, name] as const),
  ['tie/a', 'tieA'],
  ['tie/b', 'tieB'],
]

type Places = { readonly [pointer: string]: { readonly page: number; readonly box: Box | null } }

/**
 * A lesson from a permit as it was confirmed. `places` are by pointers into the same entry. A kind of which the permit
 * has several is left out: which of them a place belongs to, the place does not say.
 */
export function lessonFrom(
  leaf: string,
  pages: readonly PageWords[],
  entry: EntryDraft,
  paper: { readonly parcelNumber: string | null; readonly address: string | null },
  places: Places,
): Lesson {
  const values: Confirmed[] = []
  const add = (pointer: string, ask: Ask, kind: ComponentKind | null, value: unknown): void => {
    if ((typeof value !== 'string' && typeof value !== 'number') || value === '') return
    const place = places[pointer]
    values.push({ ask, kind, value, place: place?.box ? { page: place.page, box: place.box } : null })
  }
  add('/parcelNumber', 'parcelNumber', null, paper.parcelNumber)
  add('/address', 'address', null, paper.address)
  for (const [at, ask] of PERMIT_PLACES) add(`/${at}`, ask, null, within(entry, at))
  entry.components.forEach((component, index) => {
    if (entry.components.filter(({ kind }) => kind === component.kind).length > 1) return
    for (const [at, ask] of COMPONENT_PLACES)
      add(`/components/${index}/${at}`, ask, component.kind, within(component, at))
  })
  return { leaf, pages, values }
}

const within = (value: unknown, path: string): unknown =>
  path
    .split('/')
    .reduce<unknown>(
      (at, key) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined),
      value,
    )
