import type { Ask, SubjectKind } from './sense.ts'

const TANKS = ['tank', 'pump-chamber', 'cesspool'] as const
const FIELDS = ['seepage-pit', 'trench', 'bed', 'chambers', 'mound', 'drip-field', 'absorption'] as const

/** Which components can have a measure at all: a liquid depth under a heading of trenches is some tank's. */
const ONLY: Partial<Record<Ask, readonly SubjectKind[]>> = {
  capacity: TANKS,
  compartments: TANKS,
  liquidDepth: TANKS,
  insideHeight: TANKS,
  wallThickness: TANKS,
  shape: TANKS,
  totalLength: ['trench', 'chambers', 'bed', 'absorption', 'drip-field', 'effluent-line', 'building-sewer'],
}

const isPossible = (ask: Ask, kind: SubjectKind): boolean => ONLY[ask]?.includes(kind) ?? true

export const possibleAmong = (asks: readonly Ask[], kind: SubjectKind): boolean =>
  asks.some((ask) => isPossible(ask, kind))

/** The component a measure must belong to, if no other could have it. */
export const onlyKind = (asks: readonly Ask[]): SubjectKind | null =>
  asks.length > 0 && asks.every((ask) => ONLY[ask] === TANKS) ? 'tank' : null

export const isField = (kind: SubjectKind): boolean => (FIELDS as readonly SubjectKind[]).includes(kind)
