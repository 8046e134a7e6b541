import type { InspectionBrief } from '../../../brief/inspection-brief.ts'
import { inWords } from '../../../brief/recorded.ts'
import { whereOf } from '../../../brief/site-plan/describe.ts'
import { MEASURE_NAMES, SYSTEM_FIELDS } from '../../../catalog/catalog.ts'
import type { AsBuilt, AsBuiltComponent, Claim } from '../../../records/as-built.ts'
import { statedValue } from '../../../records/claim.ts'
import type { Parcel } from '../../../store/parcels.ts'
import { capital } from '../../pages/words/plain.ts'
import { inWalkingOrder } from './order.ts'
import type { FormerPart, InspectionSheet, SheetPart } from './sheet.ts'
import { OWN_STEPS } from './steps.ts'

type Given = {
  readonly county: string
  readonly parcel: Pick<Parcel, 'id' | 'number' | 'address'>
  readonly asBuilt: AsBuilt
  readonly brief: InspectionBrief
  readonly serves?: readonly string[]
}

/** Lays a county's file on one parcel out for whoever walks it: pure, so that a page made twice is the same page. */
export function makeSheet({
  county,
  parcel: { id, number, address },
  asBuilt,
  brief,
  serves = [],
}: Given): InspectionSheet {
  const serving = inWalkingOrder(asBuilt.components.filter(({ standing }) => standing === 'in-service'))
  const reference = asBuilt.components.map((it) => statedValue(it.reference)).find((known) => known !== null)
  const { plan, svg, words } = brief.whereToLook
  return {
    county,
    parcel: { id, number, address },
    asOf: brief.asOf,
    parts: withIds(serving).map(([step, built]) => sheetPart(step, built, brief)),
    ...(serves.length > 1 ? { serves } : {}),
    former: asBuilt.components.flatMap(formerPart),
    system: sayings(SYSTEM_FIELDS, asBuilt),
    reference: reference
      ? {
          a: reference.a,
          b: reference.b,
          wall: reference.wall,
          baseline: reference.baseline?.asWritten ?? null,
        }
      : null,
    plan: { svg: plan ? svg : null, words },
    wanted: brief.measurements.map(({ component, field, what, how, settles }) => ({
      key: component,
      field,
      what,
      how,
      settles,
    })),
    cautions: brief.cautions,
  }
}

/** `Tank #1` is `tank-1`; another of that name is `tank-1-2`. No two are alike, and none is a step's of the form itself. */
function withIds(list: readonly AsBuiltComponent[]): readonly (readonly [string, AsBuiltComponent])[] {
  const taken = new Set<string>(OWN_STEPS)
  return list.map((built) => {
    const plain =
      built.label
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '') || built.kind
    let id = plain
    for (let at = 2; taken.has(id); at++) id = `${plain}-${at}`
    taken.add(id)
    return [id, built]
  })
}

function sheetPart(
  id: string,
  { key, kind, label, measures }: AsBuiltComponent,
  { whereToLook: { plan }, expected }: InspectionBrief,
): SheetPart {
  return {
    id,
    key,
    kind,
    label,
    onRecord: sayings(MEASURE_NAMES, measures),
    where: plan
      ? plan.marks
          .filter((mark) => mark.by === 'recorded' && mark.label === label)
          .map((mark) => capital(whereOf(mark, plan.coverage)))
      : [],
    usual: expected.filter(({ component }) => component === key).map(({ says }) => says),
  }
}

/** What the file says of fields, as it says it; what it is silent on is left out. */
const sayings = <Name extends string>(
  names: readonly Name[],
  claims: { readonly [N in Name]: Claim<unknown> },
): { readonly [name: string]: string } =>
  Object.fromEntries(
    names.flatMap((name) => {
      const says = onRecord(claims[name])
      return says === null ? [] : [[name, says]]
    }),
  )

function onRecord(claim: Claim<unknown>): string | null {
  switch (claim.state) {
    case 'silent':
      return null
    case 'stated':
      return inWords(claim.value)
    case 'unreadable':
      return `can’t be read: ${claim.note}`
    case 'contradictory':
      return claim.claims
        .map(({ value, origin }) => `${inWords(value)} (permit ${origin.permit.number})`)
        .join(' or ')
  }
}

function formerPart({ key, kind, label, standing, events }: AsBuiltComponent): readonly FormerPart[] {
  if (standing === 'in-service') return []
  const last = events.at(-1) ?? events[0]
  return [{ key, kind, label, says: `${standing} by permit ${last.permit.number}` }]
}
