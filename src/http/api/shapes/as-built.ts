import { z } from 'zod'
import type { AsBuilt, AsBuiltComponent, Claim, Origin } from '../../../records/as-built.ts'
import {
  COMPONENT_KINDS,
  MATERIALS,
  MEASURE_NAMES,
  type MeasureName,
  VESSEL_SHAPES,
} from '../../../records/component.ts'
import { day } from './basics.ts'
import {
  presentLength,
  presentReference,
  presentTie,
  presentVolume,
  statedLength,
  statedReference,
  statedTie,
  volume,
} from './quantities.ts'
import { origin, permitRef, presentPermitRef, presentSource } from './source.ts'

/** What the file says of one thing. A thing it says nothing of has no claim in the answer. */
const claimOf = <T extends z.ZodType>(value: T) =>
  z.discriminatedUnion('state', [
    z.object({ state: z.literal('stated'), value, origin }),
    z.object({ state: z.literal('unreadable'), note: z.string(), origin }),
    z.object({ state: z.literal('contradictory'), claims: z.array(z.object({ value, origin })) }),
  ])

type Presented<P> =
  | { state: 'stated'; value: P; origin: PresentedOrigin }
  | { state: 'unreadable'; note: string; origin: PresentedOrigin }
  | { state: 'contradictory'; claims: { value: P; origin: PresentedOrigin }[] }
type PresentedOrigin = z.output<typeof origin>

export const presentOrigin = ({ permit, pointer, source }: Origin): PresentedOrigin => ({
  permit: presentPermitRef(permit),
  pointer,
  source: presentSource(source),
})

function presentClaim<T, P>(claim: Claim<T>, present: (value: T) => P): Presented<P> | undefined {
  switch (claim.state) {
    case 'silent':
      return undefined
    case 'stated':
      return { state: 'stated', value: present(claim.value), origin: presentOrigin(claim.origin) }
    case 'unreadable':
      return { state: 'unreadable', note: claim.note, origin: presentOrigin(claim.origin) }
    case 'contradictory':
      return {
        state: 'contradictory',
        claims: claim.claims.map(({ value, origin: from }) => ({
          value: present(value),
          origin: presentOrigin(from),
        })),
      }
  }
}

const asIs = <T>(value: T): T => value
const lengthClaim = claimOf(statedLength).optional()
const numberClaim = claimOf(z.number()).optional()

const measures = z.object({
  shape: claimOf(z.enum(VESSEL_SHAPES)).optional(),
  length: lengthClaim,
  width: lengthClaim,
  diameter: lengthClaim,
  liquidDepth: lengthClaim,
  insideHeight: lengthClaim,
  wallThickness: lengthClaim,
  effectiveDepth: lengthClaim,
  depthToTop: lengthClaim,
  pipeDiameter: lengthClaim,
  capacity: claimOf(volume).optional(),
  compartments: numberClaim,
  count: numberClaim,
  material: claimOf(z.enum(MATERIALS)).optional(),
  tie: claimOf(statedTie).optional(),
} satisfies { readonly [Name in MeasureName]: z.ZodType })

const component = z
  .object({
    key: z.string().meta({ description: 'Stable: findings and corrections name the component by it' }),
    label: z.string(),
    kind: z.enum(COMPONENT_KINDS),
    standing: z.enum(['in-service', 'replaced', 'abandoned']),
    replacedBy: z.string().nullable(),
    replaces: z.array(z.string()),
    measures,
    reference: claimOf(statedReference).optional(),
    events: z.array(
      z.object({
        what: z.enum(['installed', 'replaced', 'altered', 'abandoned', 'mentioned']),
        permit: permitRef,
      }),
    ),
  })
  .meta({ id: 'AsBuiltComponent' })

export const asBuilt = z
  .object({
    on: day,
    permits: z.array(permitRef),
    unapproved: z
      .array(permitRef)
      .meta({ description: 'In the file without a final approval by that day: they build nothing' }),
    bedrooms: numberClaim,
    designFlowGpd: numberClaim,
    percRateMpi: numberClaim,
    soilTexture: claimOf(z.string()).optional(),
    components: z.array(component),
    contradictions: z.array(z.object({ says: z.string(), permits: z.array(permitRef) })),
  })
  .meta({
    id: 'AsBuilt',
    description:
      'What should be in the ground on a day: approved permits folded in date order, then reviewers’ corrections. ' +
      'A claim is stated, unreadable or contradictory; what the file is silent on is left out.',
  })

function presentComponent(built: AsBuiltComponent): z.output<typeof component> {
  const { measures: of } = built
  const present: { readonly [N in MeasureName]: () => unknown } = {
    shape: () => presentClaim(of.shape, asIs),
    length: () => presentClaim(of.length, presentLength),
    width: () => presentClaim(of.width, presentLength),
    diameter: () => presentClaim(of.diameter, presentLength),
    liquidDepth: () => presentClaim(of.liquidDepth, presentLength),
    insideHeight: () => presentClaim(of.insideHeight, presentLength),
    wallThickness: () => presentClaim(of.wallThickness, presentLength),
    effectiveDepth: () => presentClaim(of.effectiveDepth, presentLength),
    depthToTop: () => presentClaim(of.depthToTop, presentLength),
    pipeDiameter: () => presentClaim(of.pipeDiameter, presentLength),
    capacity: () => presentClaim(of.capacity, presentVolume),
    compartments: () => presentClaim(of.compartments, asIs),
    count: () => presentClaim(of.count, asIs),
    material: () => presentClaim(of.material, asIs),
    tie: () => presentClaim(of.tie, (tie) => presentTie(tie, presentLength)),
  }
  const said = MEASURE_NAMES.flatMap((name) => {
    const claim = present[name]()
    return claim === undefined ? [] : [[name, claim] as const]
  })
  const reference = presentClaim(built.reference, (it) => presentReference(it, presentLength))
  return {
    key: built.key,
    label: built.label,
    kind: built.kind,
    standing: built.standing,
    replacedBy: built.replacedBy,
    replaces: [...built.replaces],
    measures: Object.fromEntries(said) as z.output<typeof measures>,
    ...(reference ? { reference } : {}),
    events: built.events.map(({ what, permit }) => ({ what, permit: presentPermitRef(permit) })),
  }
}

export function presentAsBuilt(built: AsBuilt): z.output<typeof asBuilt> {
  const bedrooms = presentClaim(built.bedrooms, asIs)
  const designFlowGpd = presentClaim(built.designFlowGpd, asIs)
  const percRateMpi = presentClaim(built.percRateMpi, asIs)
  const soilTexture = presentClaim(built.soilTexture, asIs)
  return {
    on: built.on,
    permits: built.permits.map(presentPermitRef),
    unapproved: built.unapproved.map(presentPermitRef),
    ...(bedrooms ? { bedrooms } : {}),
    ...(designFlowGpd ? { designFlowGpd } : {}),
    ...(percRateMpi ? { percRateMpi } : {}),
    ...(soilTexture ? { soilTexture } : {}),
    components: built.components.map(presentComponent),
    contradictions: built.contradictions.map(({ says, permits }) => ({
      says,
      permits: permits.map(presentPermitRef),
    })),
  }
}
