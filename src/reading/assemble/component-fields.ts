import { MEASURE_NAMES } from '../../catalog/catalog.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import type { Measures } from '../../records/component.ts'
import type { Ask } from '../asks.ts'
import type { Doubt, ProposedField } from '../proposal.ts'
import type { Statement } from '../statement.ts'
import { type Chosen, choose } from './choose.ts'
import type { DraftComponent } from './component-list.ts'

/** Where in a component's entry the answer to a question goes; null where the record has no place for it. */
function placeOf(
  ask: Ask,
  kind: ComponentKind,
): { readonly at: string; readonly doubts: readonly Doubt[] } | null {
  const at = (name: keyof Measures<unknown, unknown> | 'tie/a' | 'tie/b', says?: string) => ({
    at: name,
    doubts: says === undefined ? [] : [{ kind: 'meaning-assumed' as const, says, readings: [] }],
  })
  const isPipe = kind === 'building-sewer' || kind === 'effluent-line'
  switch (ask) {
    case 'tieA':
      return at('tie/a')
    case 'tieB':
      return at('tie/b')
    case 'diameter':
      return at(isPipe ? 'pipeDiameter' : 'diameter')
    case 'effectiveDepth':
      return kind === 'tank' || kind === 'pump-chamber' ? at('liquidDepth') : at('effectiveDepth')
    case 'depth':
      if (kind === 'tank' || kind === 'pump-chamber')
        return at('liquidDepth', 'the paper says only "depth"; it is taken as the liquid depth')
      if (kind === 'seepage-pit' || kind === 'cesspool')
        return at(
          'effectiveDepth',
          'the paper says only "depth"; it is taken as the sidewall below the inlet',
        )
      // Of a trench or bed the depth is that of the digging, for which the record has no place.
      return null
    default:
      return (MEASURE_NAMES as readonly string[]).includes(ask)
        ? at(ask as keyof Measures<unknown, unknown>)
        : null
  }
}

const SEVERAL = new Set<ComponentKind>([
  'seepage-pit',
  'trench',
  'bed',
  'chambers',
  'tank',
  'drip-field',
  'mound',
])

/** A proposed field from what was chosen for it. */
export const fieldOf = (
  pointer: string,
  { statement, confidence, doubts }: Chosen,
  more: readonly Doubt[] = [],
): ProposedField => ({
  pointer,
  value: statement.value,
  words: statement.excerpt.words,
  page: statement.excerpt.page,
  box: statement.excerpt.box,
  confidence: more.some(({ kind }) => kind === 'meaning-assumed') ? confidence * 0.85 : confidence,
  how: statement.how,
  why: statement.why,
  readAlike: statement.second ? statement.second.says === 'same' : null,
  doubts: [...doubts, ...more, ...lettersTaken(statement)],
})

const lettersTaken = ({ excerpt: { words, seen }, value }: Statement): Doubt[] =>
  words === seen
    ? []
    : [
        {
          kind: 'confusable-digits',
          says: `"${seen}" was read, with letters where figures belong`,
          readings: [value],
        },
      ]

/** The fields of one component under `/components/{index}`; its name and kind first. */
export function componentFields(component: DraftComponent, index: number, tag: string): ProposedField[] {
  const base = `/components/${index}`
  const { mention, kind, kindDoubts, existing } = component
  const named = {
    words: mention.excerpt.words,
    page: mention.excerpt.page,
    box: mention.excerpt.box,
    confidence:
      Math.min(0.98, mention.likeness * mention.excerpt.confidence) * (kindDoubts.length > 0 ? 0.6 : 1),
    how: mention.as === 'tick' ? ('tick' as const) : ('label' as const),
    why: null,
    readAlike: null,
    doubts: kindDoubts,
  }
  const byPlace = new Map<string, { statements: Statement[]; doubts: readonly Doubt[] }>()
  for (const statement of component.statements) {
    const place = placeOf(statement.ask, kind)
    if (!place || (place.at === 'count' && !SEVERAL.has(kind))) continue
    const known = byPlace.get(place.at)
    if (!known) byPlace.set(place.at, { statements: [statement], doubts: place.doubts })
    else if (place.doubts.length === known.doubts.length) known.statements.push(statement)
    // A plain "depth" gives way to a label that says which depth.
    else if (place.doubts.length < known.doubts.length)
      byPlace.set(place.at, { statements: [statement], doubts: place.doubts })
  }
  const fields = [...byPlace].flatMap(([at, { statements, doubts }]) => {
    const chosen = choose(statements)
    return chosen ? [fieldOf(`${base}/${at}`, chosen, doubts)] : []
  })
  return [
    { pointer: `${base}/tag`, value: tag, ...named },
    { pointer: `${base}/kind`, value: kind, ...named },
    // What was there before stays what it was: the permit only tells of it.
    ...(existing ? [{ pointer: `${base}/action`, value: 'mention', ...named }] : []),
    ...fields,
    ...sharedLength(component, base, byPlace.has('length'), fields),
  ]
}

/** Only the total of several equal lines is written: each has its share, if that comes out even. */
function sharedLength(
  component: DraftComponent,
  base: string,
  hasLength: boolean,
  fields: readonly ProposedField[],
): ProposedField[] {
  const total = hasLength
    ? undefined
    : choose(component.statements.filter(({ ask }) => ask === 'totalLength'))
  const feet = total && /^(\d+(?:\.\d+)?) ft$/.exec(String(total.statement.value))
  if (!total || !feet) return []
  const count = Number(fields.find(({ pointer }) => pointer === `${base}/count`)?.value ?? 1)
  const each = Number(feet[1]) / count
  if (count > 1 && !Number.isInteger(each * 2)) return []
  const says = `the paper gives a total of ${feet[1]} ft over ${count} lines`
  return [
    {
      ...fieldOf(`${base}/length`, total, count > 1 ? [{ kind: 'meaning-assumed', says, readings: [] }] : []),
      value: `${each} ft`,
    },
  ]
}
