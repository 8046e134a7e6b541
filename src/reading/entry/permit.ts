import { z } from 'zod'
import { isPlainDate, type PlainDate } from '../../base/plain-date.ts'
import { COMPONENT_KINDS } from '../../records/component.ts'
import {
  PERMIT_ACTIONS,
  PERMIT_KINDS,
  type PermitRecord,
  type StatedComponent,
} from '../../records/permit.ts'
import { line, prose } from './fields.ts'
import { measureEntries, optional, referenceEntry, sideFromWords } from './measures.ts'
import { dateEntry, lengthEntry } from './quantity.ts'

const componentEntry = z.strictObject({
  tag: line(60).meta({
    description: 'Its name on the paper, unique within the permit',
    examples: ['tank 1'],
  }),
  kind: z.enum(COMPONENT_KINDS),
  action: z.enum(PERMIT_ACTIONS).default('install'),
  replaces: z.array(line(60)).max(20).default([]),
  ...measureEntries(lengthEntry),
  note: optional(prose(2000)),
})

type Typed = {
  readonly issuedOn: PlainDate | null
  readonly approvedOn: PlainDate | null
  readonly reference: unknown
  readonly components: readonly Pick<StatedComponent, 'tag' | 'tie'>[]
}

/** What can only be seen by comparing fields. Runs even where single fields are at fault, so takes nothing for granted. */
function acrossFields(entry: Partial<Typed>, context: z.core.$RefinementCtx): void {
  const { issuedOn, approvedOn, components = [], reference } = entry ?? {}
  if (issuedOn && approvedOn && isPlainDate(issuedOn) && isPlainDate(approvedOn) && approvedOn < issuedOn) {
    context.addIssue({
      code: 'custom',
      path: ['approvedOn'],
      message: `approved on ${approvedOn}, before it was issued on ${issuedOn}: check both dates`,
    })
  }
  if (!Array.isArray(components)) return
  for (const index of duplicateNames(components.map((component) => component?.tag))) {
    context.addIssue({
      code: 'custom',
      path: ['components', index, 'tag'],
      message: `"${components[index]!.tag}" names two components: give each its own name`,
    })
  }
  components.forEach((component, index) => {
    if (component?.tie && !reference) context.addIssue(tieWithoutReference(index))
  })
}

export const tieWithoutReference = (index: number) => ({
  code: 'custom' as const,
  path: ['components', index, 'tie'],
  message: 'a tie needs the reference corners it runs from: fill in reference.a and reference.b',
})

/** A permit as a person types it. Parsing gives the record of `records/permit.ts`; every fault comes back at once. */
export const permitEntry = z
  .strictObject({
    number: line(60),
    kind: z.enum(PERMIT_KINDS),
    issuedOn: optional(dateEntry),
    approvedOn: optional(dateEntry).meta({
      description: 'Final approval: only an approved permit builds anything',
    }),
    bedrooms: optional(z.number().int().min(0).max(50)),
    designFlowGpd: optional(z.number().positive().max(100_000)),
    percRateMpi: optional(z.number().positive().max(1000)),
    soilTexture: optional(line(80)),
    reference: optional(referenceEntry(lengthEntry)),
    components: z.array(componentEntry).max(100).default([]),
    remarks: optional(prose(10_000)),
    unreadable: z
      .array(
        z.strictObject({
          pointer: line(200).regex(/^(\/[^/]+)+$/, 'a JSON Pointer such as /bedrooms'),
          note: line(300),
        }),
      )
      .max(100)
      .default([]),
  })
  .superRefine(acrossFields, { when: () => true })
  .transform(
    (entry): PermitRecord => ({
      ...entry,
      components: entry.components.map(
        (component): StatedComponent => ({
          ...component,
          tie: component.tie && {
            ...component.tie,
            side: component.tie.side ?? sideFromWords(component.tie.sideWords, entry.reference?.wall ?? null),
          },
        }),
      ),
    }),
  )

export type PermitEntry = z.input<typeof permitEntry>

/** Indexes of the later ones among equal names; what is no text is no name. */
export function duplicateNames(names: readonly unknown[]): number[] {
  const seen = new Set<string>()
  return names.flatMap((name, index) => {
    if (typeof name !== 'string') return []
    const plain = name.trim().toLowerCase()
    if (seen.has(plain)) return [index]
    seen.add(plain)
    return []
  })
}
