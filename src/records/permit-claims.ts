import { MEASURE_NAMES, type SystemField } from '../catalog/catalog.ts'
import type {
  AsBuilt,
  AsBuiltComponent,
  Claim,
  ComponentEvent,
  MeasureClaims,
  Origin,
  PermitRef,
} from './as-built.ts'
import { SILENT, stated as statedClaim } from './claim.ts'
import type { FiledPermit, StatedComponent } from './permit.ts'
import type { Source } from './source.ts'

export const refOf = ({ id, revision, record }: FiledPermit): PermitRef => ({
  id,
  revision,
  number: record.number,
  kind: record.kind,
  issuedOn: record.issuedOn,
  approvedOn: record.approvedOn,
})

/** The source of a value: its own, else the nearest above it, else the record's. */
export function sourceAt(permit: FiledPermit, pointer: string): Source {
  for (let at = pointer; ; at = at.slice(0, at.lastIndexOf('/'))) {
    const source = permit.sources[at]
    if (source) return source
    if (at === '') return { kind: 'typed', by: 'unknown', on: '' }
  }
}

const originAt = (permit: FiledPermit, pointer: string): Origin => ({
  permit: refOf(permit),
  pointer,
  source: sourceAt(permit, pointer),
})

/** What a permit says at a pointer: the value, that it can't be read, or nothing. */
export function claimAt<T>(permit: FiledPermit, pointer: string, value: T | null | undefined): Claim<T> {
  const lost = permit.record.unreadable.find((entry) => entry.pointer === pointer)
  if (lost) return { state: 'unreadable', note: lost.note, origin: originAt(permit, pointer) }
  return value === null || value === undefined ? SILENT : statedClaim(value, originAt(permit, pointer))
}

export const systemClaim = <Name extends SystemField>(permit: FiledPermit, name: Name): AsBuilt[Name] =>
  claimAt<unknown>(permit, `/${name}`, permit.record[name]) as AsBuilt[Name]

export function claimsOf(
  permit: FiledPermit,
  stated: StatedComponent,
  index: number,
): Pick<AsBuiltComponent, 'measures' | 'reference'> {
  const measures = Object.fromEntries(
    MEASURE_NAMES.map((name) => [
      name,
      claimAt<unknown>(permit, `/components/${index}/${name}`, stated[name]),
    ]),
  ) as MeasureClaims
  return { measures, reference: claimAt(permit, '/reference', permit.record.reference) }
}

export function newComponent(
  permit: FiledPermit,
  stated: StatedComponent,
  index: number,
  what: ComponentEvent['what'],
): AsBuiltComponent {
  return {
    key: `${permit.id}/${stated.tag}`,
    label: stated.tag,
    kind: stated.kind,
    standing: 'in-service',
    replacedBy: null,
    replaces: [],
    ...claimsOf(permit, stated, index),
    events: [{ what, permit: refOf(permit) }],
  }
}
