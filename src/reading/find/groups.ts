import type { Atom } from '../lexicon/atoms.ts'
import type { Ask, Sense, SubjectKind } from '../lexicon/sense.ts'

export type LabelUnit = 'ft' | 'in' | 'gal' | 'gpd' | 'mpi' | 'sqft'

/** A stretch of a text that asks for something. */
export type Label = {
  readonly is: 'label'
  readonly start: number
  readonly end: number
  /** What it may ask for, the likeliest first; the value beside it decides. */
  readonly asks: readonly Ask[]
  readonly kind: SubjectKind | null
  readonly unit: LabelUnit | null
  /** It asks what a rule wants, not what was put in. */
  readonly rule: boolean
  readonly weak: boolean
  readonly place: 'before' | 'after' | 'either'
  /** A colon, an equals sign or leaders follow: the value comes after. */
  readonly marked: boolean
  readonly likeness: number
}
/** A component named. */
export type Mention = {
  readonly is: 'mention'
  readonly start: number
  readonly end: number
  readonly kind: SubjectKind
  readonly ordinal: number | null
  readonly marked: boolean
  /** A common word that names a component only where it stands alone. */
  readonly weak: boolean
  readonly likeness: number
}
/** A label whose value is not wanted. */
export type Decoy = {
  readonly is: 'decoy'
  readonly start: number
  readonly end: number
  readonly marked: boolean
}
export type Group = Label | Mention | Decoy

type Asking = Extract<Sense, { is: 'asks' }>
const asksOf = (atom: Atom): Asking[] => atom.senses.filter((sense): sense is Asking => sense.is === 'asks')
type Naming = Extract<Sense, { is: 'mention' }>
const mentionOf = (atom: Atom): Naming | undefined =>
  atom.senses.find((sense): sense is Naming => sense.is === 'mention')
const has = (atom: Atom, is: Sense['is']): boolean => atom.senses.some((sense) => sense.is === is)

const MARK = /^\s*\)?\s*(?:[:=]|\.{2,}|[-–]+\s*(?=\d))/
const CLOSE = /^[\s,()'’"./&-]*$/
const FIGURE_NEXT = /^\s?[:=.–-]?\s?\d/
const JOIN_WORDS = new Set(['of', 'ofeach', 'each', 'for', 'in', 'ofthe', 'the', 'ea', 'per'])

type Draft = {
  atoms: Atom[]
  asks: Asking[]
  kinds: Naming[]
  unit: LabelUnit | null
  rule: boolean
  decoy: boolean
  joint: boolean
}
const emptyDraft = (): Draft => ({
  atoms: [],
  asks: [],
  kinds: [],
  unit: null,
  rule: false,
  decoy: false,
  joint: false,
})

/** Labels and mentions in a text: known spellings that stand together and ask for one thing. */
export function groupsIn(text: string, atoms: readonly Atom[]): readonly Group[] {
  const groups: Group[] = []
  let draft = emptyDraft()
  const close = (): void => {
    const group = groupOf(text, draft)
    if (group) groups.push(group)
    draft = emptyDraft()
  }
  for (const atom of atoms) {
    const last = draft.atoms.at(-1)
    if (last && !CLOSE.test(text.slice(last.end, atom.start))) close()
    const strong = asksOf(atom).some(({ weak }) => !weak)
    const asking = asksOf(atom)
    const mention = mentionOf(atom)
    const inLabel = draft.asks.length > 0
    const follows = draft.atoms.length > 0
    if (has(atom, 'unit') && (inLabel || afterFigure(text, atom.start))) {
      if (inLabel) draft.unit = unitOf(atom)
      if (inLabel) draft.atoms.push(atom)
      else close()
    } else if (asking.length > 0 && (strong || !inLabel || FIGURE_NEXT.test(text.slice(atom.end)))) {
      if (inLabel && !draft.joint && draft.asks.some(({ weak }) => !weak)) close()
      else if (inLabel && draft.joint && draft.asks.some(({ weak }) => !weak) && !mention) close()
      if (mention && !strong && !inLabel) draft.kinds.push(mention)
      draft.asks = asking
      draft.atoms.push(atom)
      draft.joint = /of$/i.test(text.slice(atom.start, atom.end))
    } else if (mention) {
      if (follows && !(inLabel && draft.joint) && (inLabel || draft.kinds.length > 0)) close()
      draft.kinds.push(mention)
      draft.atoms.push(atom)
      draft.joint = false
    } else if (has(atom, 'decoy')) {
      if (inLabel) close()
      draft.decoy = true
      draft.atoms.push(atom)
    } else if (has(atom, 'rule')) {
      draft.rule = true
      draft.atoms.push(atom)
    } else if (has(atom, 'joint')) {
      if (!follows) continue
      draft.joint =
        JOIN_WORDS.has(
          text
            .slice(atom.start, atom.end)
            .toLowerCase()
            .replace(/[^a-z]/g, ''),
        ) || draft.joint
      draft.atoms.push(atom)
    } else close()
  }
  close()
  return groups.filter((group, index) => isSure(text, group, groups[index - 1]))
}

const afterFigure = (text: string, start: number): boolean => /\d[\s_)"'-]*$/.test(text.slice(0, start))

const unitOf = (atom: Atom): LabelUnit | null =>
  atom.senses.find((sense): sense is Extract<Sense, { is: 'unit' }> => sense.is === 'unit')?.unit ?? null

/** `Capacity, gals.`, `Length (ft)`: a unit that the label's own spelling holds. */
function unitNamed(label: string): LabelUnit | null {
  if (/\bgal(?:lon)?s?\b/i.test(label)) return 'gal'
  const unit = /[(,]\s*(ft|feet|in|inches)\b/i.exec(label)?.[1]?.toLowerCase()
  return unit === undefined ? null : unit.startsWith('f') ? 'ft' : 'in'
}

function groupOf(text: string, draft: Draft): Group | undefined {
  const atoms = [...draft.atoms]
  while (atoms.length > 0 && atoms.at(-1)!.senses.every((sense) => sense.is === 'joint')) atoms.pop()
  const [first, last] = [atoms[0], atoms.at(-1)]
  if (!first || !last) return undefined
  const start = first.start
  // A note in brackets belongs to its label: `Property location (street and number)`.
  const note = /^\s*\([^()\d]{2,40}\)/.exec(text.slice(last.end))
  const end = draft.asks.length > 0 && note ? last.end + note[0].length : last.end
  const marked = MARK.test(text.slice(end))
  const likeness = Math.min(...atoms.map((atom) => atom.likeness))
  if (draft.decoy && draft.asks.every(({ weak }) => weak)) return { is: 'decoy', start, end, marked }
  if (draft.asks.length > 0) {
    const sides = new Set(draft.asks.map(({ after }) => after === true))
    return {
      is: 'label',
      start,
      end,
      asks: [...new Set(draft.asks.map(({ ask }) => ask))],
      kind: draft.kinds[0]?.kind ?? null,
      unit: draft.unit ?? unitNamed(text.slice(start, end)),
      rule: draft.rule,
      weak: draft.asks.every(({ weak }) => weak === true) && draft.kinds.length === 0,
      place: sides.size === 2 ? 'either' : sides.has(true) ? 'after' : 'before',
      marked,
      likeness,
    }
  }
  const named = draft.kinds[0]
  if (named === undefined) return undefined
  const ordinal = /^\s*(?:no\.?|number|#)?\s*#?\s*(\d)(?![\d'"./,-]|\s*(?:gal|ft|in\b|@|x\b|lines|-))/i.exec(
    text.slice(end),
  )
  return {
    is: 'mention',
    start,
    end: end + (ordinal ? ordinal[0].length : 0),
    kind: named.kind,
    weak: named.weak === true,
    ordinal: ordinal ? Number(ordinal[1]) : null,
    marked: MARK.test(text.slice(end + (ordinal ? ordinal[0].length : 0))),
    likeness,
  }
}

/** A common word is a label only where one can stand: at the beginning or after a value, and with a value to follow. */
function isSure(text: string, group: Group, before: Group | undefined): boolean {
  if (group.is === 'label' && !group.weak) return true
  if (group.is === 'mention')
    return !group.weak || text.replace(/[^a-z]/gi, '').length <= group.end - group.start + 1
  const ahead = text.slice(before?.end ?? 0, group.start)
  const opens = /^[\s([]*$/.test(ahead) || /[\d"'’”:;,.)\]]\s*$/.test(ahead)
  const ends =
    group.marked ||
    /^[\s.:]*$/.test(text.slice(group.end)) ||
    /^\s*[#:]?\s*\(?[A-Z]{0,4}-?\d/.test(text.slice(group.end))
  if (opens && ends) return true
  // `under permit 1987-609`: nothing else is numbered so.
  return group.is === 'label' && group.asks[0] === 'number' && NUMBERED.test(text.slice(group.start))
}
const NUMBERED = /^permit\s+(?:no\.?|#)?\s*[A-Z]{0,4}[-\d]*\d{3}\b(?!\s*(?:gal|ft|sq|gpd))/i
