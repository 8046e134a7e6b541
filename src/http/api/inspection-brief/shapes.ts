import { z } from 'zod'
import type { InspectionBrief } from '../../../brief/inspection-brief.ts'
import { COMPONENT_KINDS } from '../../../catalog/kinds.ts'
import { bringWords } from '../../../words/bring.ts'
import { doubtOf, doubtWords } from '../../../words/gaps.ts'
import { sentence } from '../../../words/sentence.ts'
import { presentOrigin } from '../shapes/as-built.ts'
import { citation, day } from '../shapes/basics.ts'
import { presentRegion, regionShape } from '../shapes/region.ts'
import { origin, permitRef, presentPermitRef } from '../shapes/source.ts'

const mark = z
  .object({
    label: z.string(),
    kind: z.enum(COMPONENT_KINDS),
    by: z.enum(['recorded', 'found']),
    xFt: z.number(),
    yFt: z.number(),
    mirror: z.boolean().meta({ description: 'One of the two places where the ties meet: no side is given' }),
    searchArea: regionShape,
  })
  .meta({ id: 'PlanMark', description: 'A place, in feet from corner A: x toward B, y away from the house' })

export const inspectionBrief = z
  .object({
    asOf: day,
    permits: z.array(permitRef),
    unapproved: z.array(permitRef),
    contradictions: z.array(z.object({ says: z.string(), permits: z.array(permitRef) })),
    recorded: z
      .array(
        z.object({
          component: z.string().nullable(),
          what: z.string(),
          says: z.string(),
          sureness: z.enum(['confirmed', 'corrected', 'unreadable', 'contradictory']),
          origins: z.array(origin),
        }),
      )
      .meta({
        description: 'The record, line by line, each with its confidence and its source',
      }),
    expected: z
      .array(
        z.object({
          about: z.string(),
          component: z.string().nullable(),
          says: z.string(),
          citations: z.array(citation),
        }),
      )
      .meta({ description: 'What is typical where the record says nothing: never a record' }),
    whereToLook: z.object({
      reference: z
        .object({
          a: z.string(),
          b: z.string(),
          wall: z.string().nullable(),
          bearingDeg: z.number().nullable(),
          baselineFt: z.number(),
        })
        .nullable(),
      marks: z.array(mark),
      svg: z.string().nullable().meta({ description: 'The same to scale, as an SVG document' }),
      words: z.array(z.string()).meta({ description: 'The same in words' }),
    }),
    remarks: z.array(z.object({ permit: z.string(), about: z.string().nullable(), says: z.string() })).meta({
      description: 'Remarks on the permits, word for word: landmarks, the drive, depths',
    }),
    bring: z.array(z.object({ what: z.string(), because: z.string() })),
    measurements: z
      .array(
        z.object({
          what: z.string(),
          component: z.string().nullable(),
          how: z.string(),
          settles: z.array(z.string()),
          weight: z.number(),
        }),
      )
      .meta({ description: 'Most useful first, by the questions that stay open without it' }),
    cautions: z.array(z.object({ says: z.string(), source: z.string() })),
    deference: z.string(),
  })
  .meta({ id: 'InspectionBrief' })

export const presentInspectionBrief = (brief: InspectionBrief): z.output<typeof inspectionBrief> => ({
  asOf: brief.asOf,
  permits: brief.permits.map(presentPermitRef),
  unapproved: brief.unapproved.map(presentPermitRef),
  contradictions: brief.contradictions.map((it) => ({
    says: sentence(doubtWords(doubtOf(it))),
    permits: it.permits.map(presentPermitRef),
  })),
  recorded: brief.recorded.map((line) => ({ ...line, origins: line.origins.map(presentOrigin) })),
  expected: brief.expected.map((line) => ({
    ...line,
    citations: line.citations.map((cited) => ({ ...cited })),
  })),
  whereToLook: {
    reference: brief.whereToLook.plan && { ...brief.whereToLook.plan.reference },
    marks: (brief.whereToLook.plan?.marks ?? []).map(({ label, kind, by, x, y, mirror, region }) => ({
      label,
      kind,
      by,
      xFt: x,
      yFt: y,
      mirror,
      searchArea: presentRegion(region),
    })),
    svg: brief.whereToLook.svg,
    words: [...brief.whereToLook.words],
  },
  remarks: brief.remarks.map((remark) => ({ ...remark })),
  bring: brief.bring.map(bringWords),
  measurements: brief.measurements.map((wanted) => ({ ...wanted, settles: [...wanted.settles] })),
  cautions: brief.cautions.map((caution) => ({ ...caution })),
  deference: brief.deference,
})
