import { type ComponentKind, isAbsorption } from '../../records/component.ts'
import type { SubjectKind } from '../lexicon/sense.ts'
import type { Doubt } from '../proposal.ts'
import type { Mentioned, Statement } from '../statement.ts'

/** One component that the paper speaks of, with all that it says of it. */
export type DraftComponent = {
  readonly kind: ComponentKind
  readonly ordinal: number | null
  readonly statements: readonly Statement[]
  readonly mention: Mentioned
  readonly kindDoubts: readonly Doubt[]
}

/** Parts that papers print as headings or ask about without putting one in: a mention alone makes none of them. */
const NAMED_ALONE = new Set<Mentioned['as']>(['tick', 'row'])

/** Statements and mentions sorted into components, in the order in which the paper comes to them. */
export function componentsOf(
  statements: readonly Statement[],
  mentions: readonly Mentioned[],
): DraftComponent[] {
  const field = fieldKind(statements, mentions)
  const settled = (kind: SubjectKind): ComponentKind => (kind === 'absorption' ? field.kind : kind)
  const groups = new Map<
    string,
    {
      kind: ComponentKind
      ordinal: number | null
      statements: Statement[]
      mentions: Mentioned[]
      general: boolean
    }
  >()
  const groupFor = (subject: SubjectKind, ordinal: number | null) => {
    const kind = settled(subject)
    const key = `${kind} ${ordinal ?? ''}`
    const known = groups.get(key) ?? { kind, ordinal, statements: [], mentions: [], general: true }
    if (subject !== 'absorption') known.general = false
    groups.set(key, known)
    return known
  }
  for (const statement of statements) {
    if (statement.kind === null) continue
    // What is said of the field in general belongs to each kind only where one was named.
    groupFor(statement.kind, statement.ordinal).statements.push(statement)
  }
  for (const mention of mentions) {
    const known = groups.get(`${settled(mention.kind)} ${mention.ordinal ?? ''}`)
    if (known) known.mentions.push(mention)
    else if (NAMED_ALONE.has(mention.as) && mention.kind !== 'absorption' && mention.kind !== 'well')
      groupFor(mention.kind, mention.ordinal).mentions.push(mention)
  }
  return unnumbered([...groups.values()])
    .filter(
      ({ kind, statements: said, mentions: named }) =>
        kind !== 'well' && (said.length > 0 || named.length > 0),
    )
    .map(
      ({ kind, ordinal, statements: said, mentions: named, general }): DraftComponent => ({
        kind,
        ordinal,
        statements: said,
        mention: best(named) ?? fromStatement(said[0]!, kind),
        kindDoubts: general && isAbsorption(kind) ? field.doubts : [],
      }),
    )
    .sort((a, b) => first(a) - first(b))
}

const first = ({ statements, mention }: DraftComponent): number =>
  Math.min(mention.order, ...statements.map(({ order }) => order))

const best = (mentions: readonly Mentioned[]): Mentioned | undefined =>
  [...mentions].sort((a, b) => rank(b) - rank(a) || a.order - b.order)[0]
const rank = ({ as, likeness, kind }: Mentioned): number =>
  ({ tick: 3, row: 3, heading: 2, passing: 1 })[as] * likeness - (kind === 'absorption' ? 2 : 0)

const fromStatement = ({ excerpt, order }: Statement, kind: ComponentKind): Mentioned => ({
  kind,
  ordinal: null,
  excerpt,
  order,
  as: 'passing',
  likeness: 0.7,
})

/** Of which kind the drainfield is where labels only say "field": what is ticked, else what else is spoken of. */
function fieldKind(
  statements: readonly Statement[],
  mentions: readonly Mentioned[],
): { kind: ComponentKind; doubts: readonly Doubt[] } {
  const ticked = mentions.find(({ kind, as }) => as === 'tick' && kind !== 'absorption' && isAbsorption(kind))
  if (ticked) return { kind: ticked.kind as ComponentKind, doubts: [] }
  const named = [...statements.flatMap(({ kind }) => kind ?? []), ...mentions.map(({ kind }) => kind)].find(
    (kind) => kind !== 'absorption' && isAbsorption(kind),
  )
  if (named) return { kind: named as ComponentKind, doubts: [] }
  return {
    kind: 'trench',
    doubts: [
      {
        kind: 'meaning-assumed',
        says: 'the paper says "field" and not of which kind; trenches are the commonest',
        readings: ['trench', 'bed', 'seepage-pit'],
      },
    ],
  }
}

type Group = {
  kind: ComponentKind
  ordinal: number | null
  statements: Statement[]
  mentions: Mentioned[]
  general: boolean
}

/** `Tank 1` beside plain `tank` is the same tank where there is only one number. */
function unnumbered(groups: readonly Group[]): Group[] {
  return groups.flatMap((group) => {
    if (group.ordinal === null) {
      const numbered = groups.filter(({ kind, ordinal }) => kind === group.kind && ordinal !== null)
      if (numbered.length !== 1) return numbered.length > 1 && group.statements.length === 0 ? [] : [group]
      numbered[0]!.statements.push(...group.statements)
      numbered[0]!.mentions.push(...group.mentions)
      return []
    }
    return [group]
  })
}
