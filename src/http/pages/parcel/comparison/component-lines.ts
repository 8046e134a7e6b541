import { MEASURE_NAMES, type MeasureName } from '../../../../catalog/catalog.ts'
import { MEASURES } from '../../../../catalog/component-measures.ts'
import { type ComponentKind, isVessel } from '../../../../catalog/kinds.ts'
import { KEPT_FROM } from '../../../../reconcile/kept-from.ts'
import type { Outcome } from '../../../../reconcile/outcome.ts'
import type { Pairing } from '../../../../reconcile/pairing.ts'
import type { AsBuiltComponent } from '../../../../records/as-built.ts'
import type { FoundComponent } from '../../../../records/findings.ts'
import { fieldNoun } from '../../../../words/fields.ts'
import { KIND_NOUNS, NOT_REACHED_WORDS, SEARCH_NOUNS } from '../../../../words/nouns.ts'
import { labelWithKind } from '../../../../words/part.ts'
import { capital, listed } from '../../../../words/sentence.ts'
import { shown as printed } from '../../../../words/things.ts'
import { type Line, oneSidedAll, twoSided } from './line.ts'
import { foundSide, recordSide, type Side, said, silent } from './side.ts'

type KeyOf = (outcome: Outcome) => string | null

/** Measures that have a line of their own or share one with what they are compared with. */
const PLAIN: readonly MeasureName[] = MEASURE_NAMES.filter(
  (name) => MEASURES[name].value === 'length' && name !== 'pipeDiameter',
)
const MATERIAL = ['material', 'pipeDiameter', 'segments', 'measuredFrom'] as const
/** What only some lines have shows where either side has it. */
const isListed = (seen: FoundComponent | null, name: MeasureName): boolean =>
  (name === 'segments' || name === 'measuredFrom') && (seen?.[name] ?? null) !== null
const ON_TWO_SIDES: readonly string[] = [
  'component-presence',
  'component-on-record',
  'type-of-component',
  'material',
  'line-material',
  'capacity-against-record',
  'position',
  'stated-distance',
  'stated-area',
]

/** The lines of one component: what record and inspection both speak of, then what only one of them or a rule can say. */
export function componentLines(
  { built, found }: Pairing,
  outcomes: readonly Outcome[],
  inspected: boolean,
  keyOf: KeyOf,
): readonly Line[] {
  const of = (...checks: readonly string[]) => outcomes.find(({ check }) => checks.includes(check))
  const seen = inspected ? found : null
  const line = (what: string, names: readonly MeasureName[], outcome?: Outcome): readonly Line[] => {
    const record = recordSide(built, names)
    const inspection = foundSide(seen, names)
    if (record.state === 'silent' && inspection.state === 'silent' && !outcome?.raises) return []
    return [twoSided(what, record, inspection, outcome, keyOf)]
  }
  const material = of('line-material', 'material')
  const distance = (name: MeasureName) =>
    outcomes.find(
      ({ check, reason }) =>
        check === 'stated-distance' && reason.is === 'distance-record' && KEPT_FROM[reason.to].field === name,
    )
  return [
    twoSided('presence', said('on record'), presence(seen, inspected), of('component-presence'), keyOf),
    typeLine(built, seen, of('type-of-component'), keyOf),
    ...line(
      'material',
      MATERIAL.filter(
        (name) => name === 'material' || built.measures[name].state !== 'silent' || isListed(seen, name),
      ),
      material,
    ),
    ...capacityLine(built, seen, of('capacity-against-record'), keyOf),
    ...areaLine(built, of('stated-area'), keyOf),
    ...PLAIN.flatMap((name) => line(fieldNoun('component', name), [name], distance(name))),
    ...line('ties', ['tie'], of('position')),
    ...oneSidedAll(
      outcomes.filter(({ check }) => !ON_TWO_SIDES.includes(check)),
      keyOf,
    ),
  ]
}

function presence(found: FoundComponent | null, inspected: boolean): Side {
  if (!inspected) return silent('no findings')
  if (found === null) return silent('not inspected')
  switch (found.outcome) {
    case 'found':
      return said('found', [searchInWords(found)])
    case 'not-found':
      return said('not found', [searchInWords(found)])
    case 'not-reached':
      return silent(`not reached: ${NOT_REACHED_WORDS[found.notReachedBecause ?? 'other']}`)
    case 'not-looked-for':
      return silent('not inspected')
  }
}

function searchInWords({ searchedBy, searchedWithin }: FoundComponent): string {
  if (searchedBy.length === 0) return 'seen by the inspector'
  const methods = listed(searchedBy.map((method) => SEARCH_NOUNS[method]))
  return `searched for by ${methods}${searchedWithin ? ` within ${searchedWithin.asWritten}` : ''}`
}

function typeLine(
  built: AsBuiltComponent,
  found: FoundComponent | null,
  outcome: Outcome | undefined,
  keyOf: KeyOf,
): Line {
  const names = ['shape', 'compartments', 'count'] as const
  const record = withKind(built.kind, recordSide(built, names))
  const inspection =
    found?.outcome === 'found' ? withKind(found.kind, foundSide(found, names)) : foundSide(found, names)
  return twoSided('type', record, inspection, outcome, keyOf)
}

const withKind = (kind: ComponentKind, side: Side): Side =>
  side.state === 'silent'
    ? { ...said(KIND_NOUNS[kind], ['seen by the inspector']), taken: side.taken }
    : { ...side, text: `${KIND_NOUNS[kind]}, ${side.text}` }

/** A size is found by computing it: the inspection's side is what its readings come to. */
function capacityLine(
  built: AsBuiltComponent,
  found: FoundComponent | null,
  outcome: Outcome | undefined,
  keyOf: KeyOf,
): readonly Line[] {
  const record = recordSide(built, ['capacity'])
  if (!outcome && record.state === 'silent') return []
  const computed = outcome?.exhibits.findLast(({ thing }) => thing === 'capacity-by-readings')
  const inspection = computed ? said(printed(computed.used)) : foundSide(found, ['capacity'])
  const fromRecord = outcome?.exhibits.find(({ word }) => word === 'stated')
  const shown =
    record.state === 'silent' && fromRecord && isVessel(built.kind) ? said('by its dimensions') : record
  return [twoSided('capacity', shown, inspection, outcome, keyOf)]
}

/** The area that a permit states; the inspection's side is what its dimensions come to. */
function areaLine(built: AsBuiltComponent, outcome: Outcome | undefined, keyOf: KeyOf): readonly Line[] {
  const record = recordSide(built, ['area'])
  if (record.state === 'silent') return []
  const isFound = outcome?.reason.is === 'absorption-record' && outcome.reason.by === 'inspection'
  const computed = isFound
    ? outcome.exhibits.find(({ thing, word }) => thing === 'absorption-area' && word === 'derived')
    : undefined
  const inspection = computed ? said(printed(computed.used)) : silent('not measured')
  return [twoSided('absorption area', record, inspection, outcome, keyOf)]
}

/** Found, or searched for, and answering to nothing on record. */
export function unrecordedLines(
  found: FoundComponent,
  outcomes: readonly Outcome[],
  keyOf: KeyOf,
): readonly Line[] {
  const here = outcomes.find(({ check }) => check === 'component-on-record')
  const measured = [...PLAIN, ...MATERIAL, 'tie'] as readonly MeasureName[]
  return [
    twoSided('presence', silent('not on record'), presence(found, true), here, keyOf),
    ...measured.flatMap((name): readonly Line[] => {
      const inspection = foundSide(found, [name])
      return inspection.state === 'silent'
        ? []
        : [twoSided(fieldNoun('component', name), silent(''), inspection, undefined, keyOf)]
    }),
    ...oneSidedAll(
      outcomes.filter((outcome) => outcome !== here),
      keyOf,
    ),
  ]
}

export const titleOf = (label: string, kind: ComponentKind): string => capital(labelWithKind({ label, kind }))
