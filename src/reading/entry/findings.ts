import { z } from 'zod'
import { METHOD_NAMES, type Method } from '../../measure/methods.ts'
import { COMPONENT_KINDS } from '../../records/component.ts'
import {
  CONDITIONS,
  type FindingsRecord,
  type FoundComponent,
  NOT_REACHED_REASONS,
  OCCUPANCY,
  SEARCH_METHODS,
  SEARCH_OUTCOMES,
} from '../../records/findings.ts'
import type { FoundLength, StatedLength } from '../../records/quantity.ts'
import { line, prose } from './fields.ts'
import { measureEntries, optional, referenceEntry, sideFromWords } from './measures.ts'
import { duplicateNames, tieWithoutReference } from './permit.ts'
import { dateEntry, lengthEntry } from './quantity.ts'

/** A length taken in the field: as written, with how it was taken; the default is the one usual for that measure. */
export const foundLength = (usual: Method) =>
  z
    .union([
      lengthEntry.transform((length) => asTaken(length, usual)),
      z
        .strictObject({
          length: lengthEntry,
          method: z.enum(METHOD_NAMES).default(usual),
          instrument: line(40)
            .optional()
            .meta({ description: 'Which tape or rod: two readings by one instrument share its error' }),
        })
        .transform(({ length, method, instrument }) => asTaken(length, method, instrument)),
    ])
    .meta({
      description: `A length as people write it, taken by ${usual}; or {length, method, instrument}`,
      examples: ['7\'-10"', { length: '94 in', method: 'inside-tape' }],
    })

/** Methods without a scale: what is written to the foot was judged to the foot. */
const WITHOUT_A_SCALE: readonly Method[] = ['by-eye', 'pacing']

/**
 * Lengths by the same kind of method on one inspection are taken to be by one instrument, unless another is named. Who tapes
 * 8'-0" writes 8': a reading by a graduated instrument written to the whole foot is one to the inch (common practice);
 * "about 8 ft" is not.
 */
function asTaken(length: StatedLength, method: Method, instrument: string = method): FoundLength {
  const toTheInch = length.halfStepFt > 1 / 6 && !length.approximate && !WITHOUT_A_SCALE.includes(method)
  return { ...length, ...(toTheInch ? { halfStepFt: 1 / 24 } : {}), method, instrument }
}

/** Height above (+) or below (−) the outlet invert. */
const levelEntry = z
  .strictObject({
    above: lengthEntry.optional(),
    below: lengthEntry.optional(),
    method: z.enum(METHOD_NAMES).default('liquid-level-rule'),
  })
  .refine(
    ({ above, below }) => (above === undefined) !== (below === undefined),
    'write above or below, one of the two',
  )
  .transform(({ above, below, method }): FoundLength => {
    const length = above ?? below!
    return { ...length, ft: above ? length.ft : 0 - length.ft, method, instrument: method }
  })
  .meta({ description: 'Liquid against the outlet invert', examples: [{ below: '5 in' }] })

const componentEntry = z.strictObject({
  key: optional(line(160)).meta({
    description: "The as-built's key of the component this is, null for one not on record",
  }),
  label: line(60),
  kind: z.enum(COMPONENT_KINDS),
  outcome: z.enum(SEARCH_OUTCOMES),
  searchedBy: z.array(z.enum(SEARCH_METHODS)).max(7).default([]),
  searchedWithin: optional(foundLength('ground-tape')),
  notReachedBecause: optional(z.enum(NOT_REACHED_REASONS)),
  ...measureEntries(foundLength('inside-tape')),
  tie: measureEntries(foundLength('ground-tape')).tie,
  liquidDepth: optional(foundLength('sounding-rod')),
  depthToTop: optional(foundLength('probe')),
  condition: optional(z.enum(CONDITIONS)),
  conditionWords: optional(prose(1000)),
  levelAboveOutlet: optional(levelEntry),
  scumThickness: optional(foundLength('sounding-rod')),
  scumBottomBelow: optional(foundLength('sounding-rod')),
  sludgeDepth: optional(foundLength('sounding-rod')),
  outletDeviceBelow: optional(foundLength('liquid-level-rule')),
  outletDeviceAbove: optional(foundLength('liquid-level-rule')),
  lidSecured: optional(z.boolean()),
  riserToGrade: optional(z.boolean()),
  fix: optional(
    z.strictObject({
      lat: z.number().min(-90).max(90),
      lon: z.number().min(-180).max(180),
      radiusFt: z.number().positive().max(10_000),
      coverage: z.union([z.literal(0.5), z.literal(0.68), z.literal(0.95)]).default(0.68),
    }),
  ),
  sondeDepth: optional(foundLength('ground-tape')),
  cameraRun: optional(foundLength('wheel')),
  note: optional(prose(2000)),
})

type Typed = {
  readonly reference: unknown
  readonly components: readonly (Partial<FoundComponent> | undefined)[]
}

/** What can only be seen by comparing fields. Runs even where single fields are at fault, so takes nothing for granted. */
function acrossFields(entry: Partial<Typed>, context: z.core.$RefinementCtx): void {
  const { components, reference } = entry ?? {}
  if (!Array.isArray(components)) return
  const fault = (index: number, field: string, message: string) =>
    context.addIssue({ code: 'custom', path: ['components', index, field], message })
  components.forEach((found: Typed['components'][number], index) => {
    if (found?.outcome === 'not-found' && (found.searchedBy ?? []).length === 0) {
      fault(index, 'searchedBy', 'say how it was searched for; without a search it is "not-looked-for"')
    }
    if (found?.outcome === 'not-reached' && !found.notReachedBecause) {
      fault(index, 'notReachedBecause', 'say why it was not reached')
    }
    if (found?.tie && !reference) context.addIssue(tieWithoutReference(index))
  })
  for (const index of duplicateNames(components.map((found) => found?.label))) {
    fault(index, 'label', `"${components[index].label}" names two components: give each its own name`)
  }
  for (const index of duplicateNames(components.map((found) => found?.key))) {
    fault(index, 'key', `"${components[index].key}" is already answered above`)
  }
}

/** Findings as an inspector types them. Parsing gives the record of `records/findings.ts`. */
export const findingsEntry = z
  .strictObject({
    inspectedOn: dateEntry,
    occupancy: z.enum(OCCUPANCY).default('unknown'),
    people: optional(z.number().int().min(0).max(200)),
    bedroomsCounted: optional(z.number().int().min(0).max(50)),
    lastPumpedOn: optional(dateEntry),
    reference: optional(referenceEntry(foundLength('ground-tape'))),
    components: z.array(componentEntry).max(100).default([]),
    notes: optional(prose(10_000)),
  })
  .superRefine(acrossFields, { when: () => true })
  .transform(
    (entry): FindingsRecord => ({
      ...entry,
      components: entry.components.map(
        (found): FoundComponent => ({
          ...found,
          tie: found.tie && {
            ...found.tie,
            side: found.tie.side ?? sideFromWords(found.tie.sideWords, entry.reference?.wall ?? null),
          },
        }),
      ),
    }),
  )

export type FindingsEntry = z.input<typeof findingsEntry>
