import { z } from 'zod'
import { compareDates } from '../../base/plain-date.ts'
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
          pointer: z.string().regex(/^(\/[^/]+)+$/, 'a JSON Pointer such as /bedrooms'),
          note: line(300),
        }),
      )
      .max(100)
      .default([]),
  })
  .superRefine((entry, context) => {
    if (entry.issuedOn && entry.approvedOn && compareDates(entry.approvedOn, entry.issuedOn) < 0) {
      context.addIssue({
        code: 'custom',
        path: ['approvedOn'],
        message: `approved on ${entry.approvedOn}, before it was issued on ${entry.issuedOn}: check both dates`,
      })
    }
    duplicateNames(entry.components.map(({ tag }) => tag)).forEach((index) => {
      const tag = entry.components[index]!.tag
      context.addIssue({
        code: 'custom',
        path: ['components', index, 'tag'],
        message: `"${tag}" names two components: give each its own name`,
      })
    })
    entry.components.forEach((component, index) => {
      if (component.tie && !entry.reference) {
        context.addIssue({
          code: 'custom',
          path: ['components', index, 'tie'],
          message: 'a tie needs the reference corners it runs from: fill in reference.a and reference.b',
        })
      }
    })
  })
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

/** Indexes of the later ones among equal names. */
export function duplicateNames(names: readonly string[]): number[] {
  const seen = new Set<string>()
  return names.flatMap((name, index) => {
    const plain = name.trim().toLowerCase()
    if (seen.has(plain)) return [index]
    seen.add(plain)
    return []
  })
}
