import { z } from 'zod'
import { MEASURE_NAMES, type Place, SYSTEM_FIELDS } from '../../../catalog/catalog.ts'
import { MEASURES } from '../../../catalog/component-measures.ts'
import type { Field } from '../../../catalog/field.ts'
import { COMPONENT_KINDS } from '../../../catalog/kinds.ts'
import { PERMIT_FIELDS } from '../../../catalog/permit-fields.ts'
import { REFERENCE } from '../../../catalog/places.ts'
import type { AsBuilt, AsBuiltComponent, Claim, Origin } from '../../../records/as-built.ts'
import { statedValue } from '../../../records/claim.ts'
import { doubtOf, doubtWords } from '../../../words/gaps.ts'
import { sentence } from '../../../words/sentence.ts'
import { day } from './basics.ts'
import { type Answer, answerSchema, presentValue } from './fields.ts'
import { origin, permitRef, presentPermitRef, presentSource } from './source.ts'

/** What the file says of one thing. A thing it says nothing of has no claim in the answer. */
const claimOf = <T extends z.ZodType>(value: T) =>
  z.discriminatedUnion('state', [
    z.object({
      state: z.literal('stated'),
      value,
      origin,
      also: z
        .array(origin)
        .optional()
        .meta({ description: 'The other permits of a list that several wrote: the stretches of a line' }),
    }),
    z.object({ state: z.literal('unreadable'), note: z.string(), origin }),
    z.object({ state: z.literal('contradictory'), claims: z.array(z.object({ value, origin })) }),
  ])

type Presented<P> =
  | { state: 'stated'; value: P; origin: PresentedOrigin; also?: PresentedOrigin[] | undefined }
  | { state: 'unreadable'; note: string; origin: PresentedOrigin }
  | { state: 'contradictory'; claims: { value: P; origin: PresentedOrigin }[] }
type PresentedOrigin = z.output<typeof origin>

export const presentOrigin = ({ permit, pointer, source }: Origin): PresentedOrigin => ({
  permit: presentPermitRef(permit),
  pointer,
  source: presentSource(source),
})

function presentClaim(field: Field, claim: Claim<unknown>): Presented<unknown> | undefined {
  const present = (value: unknown): unknown => presentValue(field, 'stated', value)
  switch (claim.state) {
    case 'silent':
      return undefined
    case 'stated':
      return {
        state: 'stated',
        value: present(claim.value),
        origin: presentOrigin(claim.origin),
        ...(claim.also ? { also: claim.also.map(presentOrigin) } : {}),
      }
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

type ClaimsOf<Fs, Names extends keyof Fs> = {
  -readonly [N in Names]?: Presented<NonNullable<Answer<Fs, 'stated'>[N & keyof Answer<Fs, 'stated'>]>>
}
type ClaimShape<Fs, Names extends keyof Fs> = {
  readonly [N in Names]: z.ZodOptional<z.ZodType<ClaimsOf<Fs, Names>[N]>>
}

/** The schemas of what the file says of fields, and what it says of them; a field it is silent on is left out. */
const claimShape = <Fs extends { readonly [N in Names]: Field }, Names extends string & keyof Fs>(
  fields: Fs,
  names: readonly Names[],
  at: Place,
) =>
  Object.fromEntries(
    names.map((name) => [name, claimOf(answerSchema(fields[name], 'stated', `${at}.${name}`)).optional()]),
  ) as unknown as ClaimShape<Fs, Names>

const presentClaims = <Fs extends { readonly [N in Names]: Field }, Names extends string & keyof Fs>(
  fields: Fs,
  names: readonly Names[],
  claims: { readonly [N in Names]: Claim<unknown> },
) =>
  Object.fromEntries(
    names.flatMap((name) => {
      const claim = presentClaim(fields[name], claims[name])
      return claim === undefined ? [] : [[name, claim]]
    }),
  ) as ClaimsOf<Fs, Names>

const component = z
  .object({
    key: z.string().meta({ description: 'Stable: findings and corrections name the component by it' }),
    label: z.string(),
    kind: z.enum(COMPONENT_KINDS),
    standing: z.enum(['in-service', 'replaced', 'abandoned']),
    replacedBy: z.string().nullable(),
    replaces: z.array(z.string()),
    measures: z.object(claimShape(MEASURES, MEASURE_NAMES, 'component')),
    ...claimShape({ reference: REFERENCE }, ['reference'], 'permit'),
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
      .meta({ description: 'On file without final approval by that day, so not part of the as-built' }),
    ...claimShape(PERMIT_FIELDS, SYSTEM_FIELDS, 'permit'),
    components: z.array(component),
    contradictions: z.array(z.object({ says: z.string(), permits: z.array(permitRef) })),
    loads: z
      .array(
        z.object({
          parcel: z.string(),
          bedrooms: z.number().nullable(),
          designFlowGpd: z.number().nullable(),
        }),
      )
      .optional()
      .meta({
        description:
          'Of a system that serves several parcels: what each puts on it; null where it is not known',
      }),
  })
  .meta({
    id: 'AsBuilt',
    description:
      'What should be in the ground on a day: approved permits folded in date order, then reviewers’ corrections. ' +
      'A claim is stated, unreadable or contradictory; what the file does not say is left out.',
  })

const presentComponent = (built: AsBuiltComponent): z.output<typeof component> => ({
  key: built.key,
  label: built.label,
  kind: built.kind,
  standing: built.standing,
  replacedBy: built.replacedBy,
  replaces: [...built.replaces],
  measures: presentClaims(MEASURES, MEASURE_NAMES, built.measures),
  ...presentClaims({ reference: REFERENCE }, ['reference'], built),
  events: built.events.map(({ what, permit }) => ({ what, permit: presentPermitRef(permit) })),
})

export const presentAsBuilt = (built: AsBuilt): z.output<typeof asBuilt> => ({
  on: built.on,
  permits: built.permits.map(presentPermitRef),
  unapproved: built.unapproved.map(presentPermitRef),
  ...presentClaims(PERMIT_FIELDS, SYSTEM_FIELDS, built),
  components: built.components.map(presentComponent),
  contradictions: built.contradictions.map((it) => ({
    says: sentence(doubtWords(doubtOf(it))),
    permits: it.permits.map(presentPermitRef),
  })),
  ...(built.loads
    ? {
        loads: built.loads.map(({ parcel, said, ...stated }) => ({
          parcel,
          bedrooms: said.bedrooms ?? statedValue(stated.bedrooms),
          designFlowGpd: said.designFlowGpd ?? statedValue(stated.designFlowGpd),
        })),
      }
    : {}),
})
