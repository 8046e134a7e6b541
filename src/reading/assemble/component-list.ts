import { type ComponentKind, isAbsorption } from '../../catalog/kinds.ts'
import type { SubjectKind } from '../asks.ts'
import type { Doubt } from '../proposal.ts'
import type { Mentioned, Statement } from '../statement.ts'
import { sameValue } from './choose.ts'

/** One component that the paper speaks of, with all that it says of it. */
export type DraftComponent = {
  readonly kind: ComponentKind
  /** It was there before this permit's work. */
  readonly existing: boolean
  readonly statements: readonly Statement[]
  readonly mention: Mentioned
  readonly kindDoubts: readonly Doubt[]
}

type Group = {
  readonly kind: SubjectKind
  readonly existing: boolean
  readonly ordinal: number | null
  readonly statements: Statement[]
  readonly mentions: Mentioned[]
}

/** Statements and mentions sorted into components, in the order in which the paper comes to them. */
export function componentsOf(
  statements: readonly Statement[],
  mentions: readonly Mentioned[],
): DraftComponent[] {
  const groups: Group[] = []
  const groupFor = ({
    kind,
    existing,
    ordinal,
  }: Pick<Statement, 'existing' | 'ordinal'> & { kind: SubjectKind }): Group => {
    const known = groups.find((it) => it.kind === kind && it.existing === existing && it.ordinal === ordinal)
    if (known) return known
    const group: Group = { kind, existing, ordinal, statements: [], mentions: [] }
    groups.push(group)
    return group
  }
  for (const statement of statements)
    if (statement.kind !== null) groupFor({ ...statement, kind: statement.kind }).statements.push(statement)
  for (const mention of mentions) groupFor(mention).mentions.push(mention)
  return joinedUp(groups)
    .filter(
      ({ kind, statements: said, mentions: named }) => kind !== 'well' && said.length + named.length > 0,
    )
    .map((group): DraftComponent => {
      const { kind, doubts } = fieldKind(group.kind)
      return {
        kind,
        existing: group.existing,
        statements: group.statements,
        mention: best(group.mentions) ?? fromStatement(group.statements[0]!, kind),
        kindDoubts: doubts,
      }
    })
    .sort((a, b) => first(a) - first(b))
}

/**
 * A paper tells of one part in several places: groups of one kind that contradict each other in nothing are one part. A
 * field not named more closely is the one that is.
 */
function joinedUp(groups: readonly Group[]): Group[] {
  const joined: Group[] = []
  const isFieldOf = (a: Group, b: Group): boolean =>
    (a.kind === 'absorption' && b.kind !== 'well' && isAbsorption(b.kind as ComponentKind)) ||
    (b.kind === 'absorption' && isAbsorption(a.kind as ComponentKind))
  const named = [...groups].sort(
    (a, b) =>
      Number(a.kind === 'absorption') - Number(b.kind === 'absorption') ||
      b.statements.length - a.statements.length,
  )
  for (const group of named) {
    const like = joined.find(
      (other) =>
        other.existing === group.existing &&
        (other.kind === group.kind || isFieldOf(other, group)) &&
        !contradict(other, group),
    )
    if (like) {
      like.statements.push(...group.statements)
      like.mentions.push(...group.mentions)
    } else joined.push({ ...group, statements: [...group.statements], mentions: [...group.mentions] })
  }
  return joined
}

/** Of one part nothing is told twice in different words, but where a reader erred: one difference among much is none. */
const contradict = (a: Group, b: Group): boolean =>
  a.statements.some((one) =>
    b.statements.some(
      (other) =>
        one.ask === other.ask &&
        !sameValue(one.value, other.value) &&
        one.how !== 'family' &&
        other.how !== 'family',
    ),
  )

const first = ({ statements, mention }: DraftComponent): number =>
  Math.min(mention.order, ...statements.map(({ order }) => order))

const best = (mentions: readonly Mentioned[]): Mentioned | undefined =>
  [...mentions].sort(
    (a, b) =>
      Number(b.as === 'tick') - Number(a.as === 'tick') || b.likeness - a.likeness || a.order - b.order,
  )[0]

const fromStatement = (
  { excerpt, order, fit, existing, why }: Statement,
  kind: ComponentKind,
): Mentioned => ({
  kind,
  ordinal: null,
  existing,
  excerpt: why ? { ...excerpt, words: why.words, seen: why.words, box: why.box } : excerpt,
  order,
  as: 'named',
  likeness: Math.min(0.95, fit),
})

/** Of which kind a drainfield is that the paper only calls a field. */
function fieldKind(kind: SubjectKind): { kind: ComponentKind; doubts: readonly Doubt[] } {
  if (kind !== 'absorption') return { kind, doubts: [] }
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
