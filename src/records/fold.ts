import { isBy } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import { SYSTEM_FIELDS } from '../catalog/catalog.ts'
import { isAbsorption, isLine } from '../catalog/kinds.ts'
import { PERMIT_FIELDS } from '../catalog/permit-fields.ts'
import type {
  AsBuilt,
  AsBuiltComponent,
  Contradiction,
  Correction,
  LoadOfParcel,
  PermitRef,
  SystemClaims,
} from './as-built.ts'
import { SILENT, superseded, together } from './claim.ts'
import { applyCorrections } from './correct.ts'
import { type Draft, isNamed, targets } from './draft-of-fold.ts'
import { type Folded, foldedInOrder } from './in-order.ts'
import { partOnRecord, SYSTEM } from './part.ts'
import type { FiledPermit, StatedComponent } from './permit.ts'
import { claimsOf, newComponent, refOf, systemClaim } from './permit-claims.ts'
import { laidOver } from './segments.ts'
import type { Share } from './system.ts'

/**
 * The as-built on a day: permits with a final approval on or before it, folded in date order. A replacement ends what
 * it names, an alteration changes in part, an abandonment takes out of use. Where the papers can't all be true, or do
 * not say which of several components they mean, that is recorded as a contradiction and nothing is guessed.
 */
export function asBuiltOn(
  permits: readonly FiledPermit[],
  corrections: readonly Correction[],
  on: PlainDate,
  shares: readonly Share[] = [],
): AsBuilt {
  const standing = ({ record }: FiledPermit): boolean | null =>
    record.approvedOn === null ? false : isBy(record.approvedOn, on)
  const approved = foldedInOrder(
    permits.filter((permit) => standing(permit) === true),
    (some) => foldAll(some, shares),
  )
  const open = permits.filter((permit) => standing(permit) === null)
  const dated: readonly Contradiction[] = [
    ...(open.length > 0 ? [byDay('approved-when', open)] : []),
    ...(approved.unclear.length > 0 ? [byDay('order-unclear', [...new Set(approved.unclear)])] : []),
  ]
  const { contradictions, ...folded } = approved.folded
  const built = applyCorrections(
    {
      on,
      permits: approved.permits.map(refOf),
      unapproved: permits.filter((permit) => standing(permit) !== true).map(refOf),
      ...folded,
      contradictions: [...contradictions, ...dated],
    },
    corrections,
  )
  if (shares.length < 2) return built
  // No paper states what the houses put on it together: each states its own, and the sum is a question of its own.
  const loads = shares.map((share) => loadOf(share, permits, corrections, on))
  return { ...built, bedrooms: SILENT, designFlowGpd: SILENT, loads }
}

/** By the permits in the file of one of the parcels served, corrected as they are. */
function loadOf(
  { parcel, permits: own, bedrooms, designFlowGpd }: Share,
  permits: readonly FiledPermit[],
  corrections: readonly Correction[],
  on: PlainDate,
): LoadOfParcel {
  const stated = asBuiltOn(
    permits.filter(({ id }) => own.includes(id)),
    corrections.filter(({ component }) => component === null),
    on,
  )
  return {
    parcel,
    bedrooms: stated.bedrooms,
    designFlowGpd: stated.designFlowGpd,
    said: { bedrooms, designFlowGpd },
  }
}

const byDay = (gap: 'approved-when' | 'order-unclear', permits: readonly FiledPermit[]): Contradiction => ({
  gap,
  part: SYSTEM,
  permits: permits.map(refOf),
})

/** Permits in the order in which they come. */
function foldAll(permits: readonly FiledPermit[], shares: readonly Share[]): Folded {
  const file = (permit: string) => shares.find(({ permits: own }) => own.includes(permit))?.parcel
  const draft: Draft = {
    components: [],
    contradictions: [],
    inOneFile: (permit, other) => file(permit) === file(other),
  }
  let system = Object.fromEntries(SYSTEM_FIELDS.map((name) => [name, SILENT])) as SystemClaims
  for (const permit of permits) {
    system = foldSystem(system, permit)
    if (permit.record.kind === 'abandonment' && permit.record.components.length === 0)
      abandonAll(draft, permit)
    permit.record.components.forEach((stated, index) => {
      foldComponent(draft, permit, stated, index)
    })
    askWhatBecomes(draft, permit)
  }
  const { components, contradictions } = draft
  return { ...system, components, contradictions }
}

/**
 * New work and alterations may set the design anew; a repair that states another design contradicts it. Of the ground
 * the newer reading stands.
 */
function foldSystem(before: SystemClaims, permit: FiledPermit): SystemClaims {
  const resets = permit.record.kind === 'new' || permit.record.kind === 'alteration'
  return Object.fromEntries(
    SYSTEM_FIELDS.map((name) => {
      const merge = resets || PERMIT_FIELDS[name].asBuilt === 'site' ? superseded : together
      return [name, merge<unknown>(before[name], systemClaim(permit, name))]
    }),
  ) as SystemClaims
}

function foldComponent(draft: Draft, permit: FiledPermit, stated: StatedComponent, index: number): void {
  switch (stated.action) {
    case 'add':
      draft.components.push(newComponent(permit, stated, index, 'installed'))
      break
    case 'install':
      install(draft, permit, stated, index)
      break
    case 'replace':
      if (isInPart(stated)) foldComponent(draft, permit, { ...stated, action: 'alter' }, index)
      else replace(draft, permit, stated, index)
      break
    case 'alter':
      onTarget(draft, permit, stated, 'alter', (target) =>
        overlay(target, permit, stated, index, superseded, 'altered'),
      )
      break
    case 'abandon':
      onTarget(draft, permit, stated, 'abandon', (target) => ({
        ...target,
        standing: 'abandoned',
        events: [...target.events, { what: 'abandoned', permit: refOf(permit) }],
      }))
      break
    case 'mention': {
      const target = targets(draft, permit, stated)[0]
      if (target) put(draft, overlay(target, permit, stated, index, together, 'mentioned'))
      else draft.components.push(newComponent(permit, stated, index, 'mentioned'))
    }
  }
}

/** Who replaces a line from one station to another, and says nothing of the rest of it, leaves the rest in the ground. */
const isInPart = ({ kind, segments, material, length }: StatedComponent): boolean =>
  isLine(kind) && (segments ?? null) !== null && material === null && length === null

/**
 * A repair that installs a field, and says nothing of the one that is there, may have put it beside the old one or in its
 * place: `add` or `replace` says which, and so does abandoning, altering or mentioning the old one.
 */
function askWhatBecomes(draft: Draft, permit: FiledPermit): void {
  if (permit.record.kind !== 'repair') return
  const installs = (tag: string) =>
    permit.record.components.some((it) => it.tag === tag && it.action === 'install')
  const serving = draft.components.filter(
    ({ kind, standing }) => isAbsorption(kind) && standing === 'in-service',
  )
  const fresh = serving.filter(
    ({ events: [{ permit: by }], label }) => by.id === permit.id && installs(label),
  )
  const old = serving.filter(({ events }) => events.every(({ permit: by }) => by.id !== permit.id))
  for (const it of old.length > 0 ? fresh : []) {
    draft.contradictions.push({
      gap: 'beside-or-instead',
      part: partOnRecord(it),
      permit: permit.record.number,
      among: old.map(partOnRecord),
      permits: [refOf(permit), ...old.map(({ events }) => events[0].permit)],
    })
  }
}

/** A second `new` permit for a component of the same name, with no word of replacement, speaks of the same one. */
function install(draft: Draft, permit: FiledPermit, stated: StatedComponent, index: number): void {
  const twin = draft.components.find(
    (known) =>
      isNamed(known, stated) &&
      known.standing === 'in-service' &&
      draft.inOneFile(known.events[0].permit.id, permit.id),
  )
  if (!twin || permit.record.kind !== 'new') {
    draft.components.push(newComponent(permit, stated, index, 'installed'))
    return
  }
  put(draft, overlay(twin, permit, stated, index, together, 'installed'))
  draft.contradictions.push({
    gap: 'put-in-twice',
    part: partOnRecord(twin),
    permits: [twin.events[0].permit, refOf(permit)],
  })
}

function replace(draft: Draft, permit: FiledPermit, stated: StatedComponent, index: number): void {
  const found = targets(draft, permit, stated)
  const named = stated.replaces.length > 0
  if (found.length === 0 || (!named && found.length > 1)) {
    draft.contradictions.push(unclear(permit, stated, 'replace', found))
    draft.components.push(newComponent(permit, stated, index, 'installed'))
    return
  }
  const successor = newComponent(permit, stated, index, 'installed')
  for (const target of found) {
    put(draft, {
      ...target,
      standing: 'replaced',
      replacedBy: successor.key,
      events: [...target.events, { what: 'replaced', permit: refOf(permit) }],
    })
  }
  draft.components.push({ ...successor, replaces: found.map(({ key }) => key) })
}

function onTarget(
  draft: Draft,
  permit: FiledPermit,
  stated: StatedComponent,
  verb: 'alter' | 'abandon',
  change: (target: AsBuiltComponent) => AsBuiltComponent,
): void {
  const found = targets(draft, permit, stated)
  if (found.length === 1) put(draft, change(found[0]!))
  else draft.contradictions.push(unclear(permit, stated, verb, found))
}

const unclear = (
  permit: FiledPermit,
  stated: StatedComponent,
  verb: 'replace' | 'alter' | 'abandon',
  found: readonly AsBuiltComponent[],
): Contradiction => ({
  gap: found.length === 0 ? 'no-target' : 'which-target',
  verb,
  permit: permit.record.number,
  part: partOnRecord({ key: `${permit.id}/${stated.tag}`, label: stated.tag, kind: stated.kind }),
  among: found.map(partOnRecord),
  permits: [refOf(permit), ...found.map(({ events }): PermitRef => events[0].permit)],
})

const put = (draft: Draft, changed: AsBuiltComponent): void => {
  draft.components = draft.components.map((known) => (known.key === changed.key ? changed : known))
}

function overlay(
  target: AsBuiltComponent,
  permit: FiledPermit,
  stated: StatedComponent,
  index: number,
  merge: typeof together,
  what: 'altered' | 'mentioned' | 'installed',
): AsBuiltComponent {
  const said = claimsOf(permit, stated, index)
  const merged = Object.fromEntries(
    Object.entries(target.measures).map(([name, claim]) => [
      name,
      merge<unknown>(claim, said.measures[name as keyof typeof said.measures]),
    ]),
  ) as AsBuiltComponent['measures']
  const measures =
    what === 'altered'
      ? { ...merged, segments: laidOver(target.measures.segments, said.measures.segments) }
      : merged
  return {
    ...target,
    measures,
    reference: superseded(target.reference, said.reference),
    events: [...target.events, { what, permit: refOf(permit) }],
  }
}

function abandonAll(draft: Draft, permit: FiledPermit): void {
  draft.components = draft.components.map((known) =>
    known.standing === 'in-service'
      ? {
          ...known,
          standing: 'abandoned',
          events: [...known.events, { what: 'abandoned', permit: refOf(permit) }],
        }
      : known,
  )
}
