import type { Field, ToldOf } from '../../../reading/association/fields.ts'
import type { Chance } from './chance.ts'
import { MEASURE_LABELS } from './lexicon/measure-labels.ts'
import { MENTIONS } from './lexicon/names.ts'
import { PERMIT_LABELS } from './lexicon/permit-labels.ts'
import type { Sheet } from './sheet.ts'
import { INSTALLED_ON, INSTALLER_LABELS, OTHER_DATES, OTHER_NUMBERS, OWNER_LABELS } from './words.ts'

const SHORT: Record<string, string> = {
  no: 'No.',
  num: 'Num.',
  dia: 'Dia.',
  diam: 'Diam.',
  gal: 'gal.',
  cap: 'Cap.',
  liq: 'Liq.',
  ft: 'ft.',
  est: 'Est.',
  dist: 'Dist.',
  pt: 'Pt.',
  ht: 'Ht.',
  id: 'ID',
  apn: 'APN',
  pin: 'PIN',
  gpd: 'GPD',
  mpi: 'MPI',
  perc: 'Perc',
  assessors: "Assessor's",
  i: 'I.',
  d: 'D.',
  l: 'L',
  w: 'W',
}
const EXTRA: Partial<Record<Field, string>> = {
  owner: OWNER_LABELS,
  installer: INSTALLER_LABELS,
  installedOn: INSTALLED_ON,
  otherDate: OTHER_DATES,
  otherNumber: OTHER_NUMBERS,
  count:
    'no. of lines|no. of trenches|number|quantity|how many|no.|#|lines|laterals|number of pits|no. of pits|no. of beds|trenches',
  tieA: 'a|from a|cor. a|corner a|pt. a|dist. a|a to|from corner a',
  tieB: 'b|from b|cor. b|corner b|pt. b|dist. b|b to|from corner b',
  depth:
    'depth|total depth|trench depth|excavated depth|depth of excavation|depth of trench|dig depth|overall depth|depth dug|depth to bottom|bottom depth|depth of dig',
  part: 'type|system type|type of system|disposal field type|kind of disposal',
  kind: 'type of work|work|permit for|permit type|nature of work|purpose|class|for',
  approvedOn:
    "final|approved|final insp.|passed|inspected and approved|final ok|ok'd|approved by health officer on|final approval|date approved",
}

const split = new Map<string, readonly string[]>()
const listOf = (bars: string): readonly string[] => {
  const known = split.get(bars)
  if (known) return known
  const list = bars.split('|').map((one) => one.replace(/^~/, ''))
  split.set(bars, list)
  return list
}

const spellings = (f: Field): string =>
  (PERMIT_LABELS as Record<string, string>)[f] ??
  (MEASURE_LABELS as Record<string, string>)[f] ??
  EXTRA[f] ??
  f

/** A label of a field, `before` its value or `after` it (`60 ft long`), as the page writes labels. */
/** Words of a label that only one kind of part is asked with. */
const ONLY_OF: readonly (readonly [RegExp, RegExp])[] = [
  [/\b(?:lines?|laterals?|trench(?:es)?|tile)\b/, /^(?:trench|chambers|drip-field|absorption|permit)$/],
  [/\bpits?\b/, /^(?:seepage-pit|cesspool)$/],
  [/\bbeds?\b(?! ?rooms?)/, /^(?:bed|mound)$/],
  [/\btanks?\b/, /^(?:tank|pump-chamber)$/],
  [/\b(?:gravel|rock|stone|aggregate|pipe)\b/, /^(?!seepage-pit|cesspool|tank$)/],
  [/\b(?:inlet|sidewall|side wall)\b/, /^(?!trench|bed|chambers|mound|drip-field|absorption)/],
]

export function labelOf(
  sheet: Sheet,
  f: Field,
  side: 'before' | 'after' = 'before',
  of: ToldOf = 'permit',
): string {
  const { roll } = sheet
  const extra = EXTRA[f]
  const all = listOf(extra && roll.chance(0.4) ? extra : spellings(f))
  const fitting = all.filter(
    (one) =>
      one.startsWith('<') === (side === 'after') &&
      (of === 'permit' || ONLY_OF.every(([words, kinds]) => !words.test(one) || kinds.test(of))),
  )
  const chosen = roll.pick(fitting.length > 0 ? fitting : all).replace(/^</, '')
  return side === 'after' ? chosen : cased(sheet, chosen)
}

export function nameOf(sheet: Sheet, of: ToldOf): string {
  const names = (MENTIONS as Record<string, string>)[of]
  return cased(sheet, names ? sheet.roll.pick(listOf(names)) : of)
}

/** Names of parts that running text keeps small. */
export function plainNameOf(roll: Chance, of: ToldOf): string {
  const names = (MENTIONS as Record<string, string>)[of]
  return names ? roll.pick(listOf(names)) : of
}

export function cased(sheet: Sheet, text: string): string {
  const { roll } = sheet
  const words = text.split(' ').map((word, nth) => {
    const short = SHORT[word]
    if (short && roll.chance(0.8)) return sheet.caps === 'lower' ? short.toLowerCase() : short
    if (word.length <= 2 && /^[a-z]$/.test(word) && /^(?:a|b)$/.test(word)) return word.toUpperCase()
    if (sheet.caps === 'lower' || (sheet.caps === 'sentence' && nth > 0)) return word
    if (nth > 0 && /^(?:of|to|in|the|for|and|or|per|from|below|under)$/.test(word) && roll.chance(0.7))
      return word
    return word.charAt(0).toUpperCase() + word.slice(1)
  })
  const joined = words.join(' ')
  return sheet.caps === 'upper' ? joined.toUpperCase() : joined
}
