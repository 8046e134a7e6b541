import { KEPT_APART } from '../../catalog/distances.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import type { Body } from '../../geometry/setback/setback.ts'
import type { Step } from '../../measure/step.ts'
import { exact } from '../../measure/uncertain.ts'
import type { AsBuiltComponent } from '../../records/as-built.ts'
import { SILENT, statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { HOUSE, type Part, partFound, partOnRecord } from '../../records/part.ts'
import type { Case } from '../case.ts'
import { type Fact, firstKnown, known, lacking } from '../fact.ts'
import { extentOf } from './extent.ts'
import { foundPlace, type Place, recordedPlace } from './place.ts'

/** Something that has to keep a distance, or that one is kept from: on record, found, or both; the house is neither. */
export type Kept = {
  readonly kind: ComponentKind | 'house'
  readonly built: AsBuiltComponent | null
  readonly found: FoundComponent | null
}

/** Where it is and how far it reaches. */
export type Sited = { readonly body: Body; readonly steps: readonly Step[] }

/** In service on record; one that was searched for and is not there keeps no distance. */
export const keptOnRecord = ({ pairings }: Case): readonly Kept[] =>
  pairings
    .filter(({ found }) => found?.outcome !== 'not-found')
    .map(({ built, found }) => ({ kind: built.kind, built, found }))

/** Found, and on no permit. What the record has sealed or taken out of service is not among them. */
export const keptFound = ({ unrecorded }: Case): readonly Kept[] =>
  unrecorded
    .filter(({ outcome }) => outcome === 'found')
    .map((found) => ({ kind: found.kind, built: null, found }))

const isPart = ({ kind }: Kept): boolean => (KEPT_APART as readonly string[]).includes(kind)
const isWell = ({ kind }: Kept): boolean => kind === 'well'
export const partsOnRecord = (given: Case): readonly Kept[] => keptOnRecord(given).filter(isPart)
export const partsThere = (given: Case): readonly Kept[] => [
  ...partsOnRecord(given),
  ...keptFound(given).filter(isPart),
]
export const wellsOnRecord = (given: Case): readonly Kept[] => keptOnRecord(given).filter(isWell)
export const wellsFound = (given: Case): readonly Kept[] => keptFound(given).filter(isWell)
export const wellsThere = (given: Case): readonly Kept[] => [...wellsOnRecord(given), ...wellsFound(given)]

/** The wall that ties run from, where its length is known. */
export const houseWall = (given: Case): readonly Kept[] =>
  given.pairings.some(({ built }) => wallFt(built, given) !== null)
    ? [{ kind: 'house', built: null, found: null }]
    : []

export const partOf = ({ built, found }: Kept): Part =>
  built ? partOnRecord(built) : found ? partFound(found) : HOUSE

/** `beside`: the part that asks, whose corners those of an unrecorded thing are taken to be where it names none. */
export function placeOf(kept: Kept, given: Case, beside: Kept | null = null): Fact<Sited> {
  if (kept.kind === 'house') return wall(beside?.built ?? null, given)
  const place = placeAlone(kept, given, beside)
  if (place.state !== 'known') return place
  const { located, steps } = place.value
  return known(
    { body: { located, extent: extentOf({ ...kept, kind: kept.kind }) }, steps },
    ...place.exhibits,
  )
}

function placeAlone({ built, found }: Kept, given: Case, beside: Kept | null): Fact<Place> {
  const { findings } = given
  const part = partOf({ kind: 'tank', built, found })
  const reference = built?.reference ?? beside?.built?.reference ?? anyReference(given)
  const seen =
    found && findings && (found.tie || found.fix) ? foundPlace(found, { reference, part }, findings) : null
  const stated = built ? recordedPlace(built, given) : null
  if (seen && stated) return firstKnown(seen, stated)
  return seen ?? stated ?? lacking({ gap: 'no-ties', part })
}

/** The corners that the record's ties run from, for a thing that no paper places. */
const anyReference = ({ pairings }: Case): AsBuiltComponent['reference'] =>
  pairings.map(({ built }) => built.reference).find((it) => statedValue(it) !== null) ?? SILENT

const wallFt = (built: AsBuiltComponent | null, { findings }: Case): number | null =>
  findings?.record.reference?.baseline?.ft ??
  (built ? (statedValue(built.reference)?.baseline?.ft ?? null) : null)

function wall(built: AsBuiltComponent | null, given: Case): Fact<Sited> {
  const ft = wallFt(built, given)
  if (ft === null) return lacking({ gap: 'no-baseline' })
  const corner = { x: exact(0), y: exact(0) }
  return known({
    body: {
      located: { half: 1, sightings: [{ kind: 'fix', name: 'corner A', point: corner }] },
      extent: { kind: 'wall', to: [ft, 0] },
    },
    steps: [],
  })
}
