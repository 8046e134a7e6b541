import { z } from 'zod'
import { MEASURES } from '../../../catalog/component-measures.ts'
import type { FieldOf } from '../../../catalog/field.ts'
import type { AbsorptionKind } from '../../../catalog/kinds.ts'
import { PERMIT_FIELDS } from '../../../catalog/permit-fields.ts'
import { COUNTED_SURFACES } from '../../../geometry/absorption/absorption-shape.ts'
import { MINIMUM_VERDICTS } from '../../../measure/compare.ts'
import type { AbsorptionAnswer } from '../../../operations/calculations/absorption-area.ts'
import { foundField } from '../../../reading/entry/found-field.ts'
import { numberEntry } from '../../../reading/entry/number-entry.ts'
import { VERIFIED } from '../../../rules/citation.ts'
import { citation, step } from '../shapes/basics.ts'
import { presentCitations, presentSteps, presentUncertainty, ruleQuestion, U, uncertainty } from './shapes.ts'

const { length, width, diameter, effectiveDepth } = MEASURES
const over = (field: FieldOf<'length'>, kind: AbsorptionKind) => foundField(field, kind, 'ground-tape')
const into = (field: FieldOf<'length'>, kind: AbsorptionKind) => foundField(field, kind, 'inside-tape')
const rows = (kind: AbsorptionKind) => z.array(over(length, kind)).min(1).max(50)

export const absorptionBody = z
  .strictObject({
    shape: z.discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('pits'),
        diameter: into(diameter, 'seepage-pit'),
        effectiveDepth: into(effectiveDepth, 'seepage-pit').meta({ description: 'Sidewall below the inlet' }),
        count: z.int('write a whole number').min(1).max(99).default(1),
      }),
      z.strictObject({
        kind: z.literal('trenches'),
        width: over(width, 'trench'),
        lengths: rows('trench'),
        effectiveDepth: into(effectiveDepth, 'trench')
          .optional()
          .meta({ description: 'Gravel below the pipe' }),
      }),
      z.strictObject({
        kind: z.literal('bed'),
        length: over(length, 'bed'),
        width: over(width, 'bed'),
        effectiveDepth: into(effectiveDepth, 'bed').optional(),
      }),
      z.strictObject({
        kind: z.literal('chambers'),
        width: over(width, 'chambers'),
        lengths: rows('chambers'),
        credit: z.number().positive().max(10).default(1),
      }),
      z.strictObject({
        kind: z.literal('mound'),
        basalLength: over(length, 'mound'),
        basalWidth: over(width, 'mound'),
      }),
    ]),
    counts: z.enum(COUNTED_SURFACES).optional().meta({
      description:
        'Which surfaces count; default: a pit by its sidewall, the rest by what the rule counts, or the bottom if there is no rule',
    }),
    required: z
      .strictObject({
        ...ruleQuestion,
        percRateMpi: numberEntry(PERMIT_FIELDS.percRateMpi).meta({ description: 'Minutes per inch' }),
        bedrooms: numberEntry(PERMIT_FIELDS.bedrooms).optional(),
        flowGpd: numberEntry(PERMIT_FIELDS.designFlowGpd).optional(),
        soil: z.string().max(80).optional(),
      })
      .optional()
      .meta({ description: 'To compare with what a code required on a day' }),
  })
  .meta({
    id: 'AbsorptionAreaQuestion',
    examples: [
      {
        shape: { kind: 'pits', diameter: '8 ft', effectiveDepth: '6 ft', count: 2 },
        required: { rules: 'quillback', on: '1974-06-20', percRateMpi: 5, bedrooms: 3 },
      },
    ],
  })

export const absorptionAnswer = z
  .object({
    counts: z.enum(COUNTED_SURFACES),
    providedSqFt: z.number(),
    expandedUncertaintySqFt: z.number(),
    ...uncertainty,
    required: z
      .object({
        sqFt: z.number().nullable(),
        silence: z.string().nullable().meta({ description: 'Why there is no figure' }),
        verdict: z.enum(MINIMUM_VERDICTS).nullable(),
        pack: z.string().nullable(),
        verified: z.enum(VERIFIED).nullable(),
        citations: z.array(citation),
      })
      .nullable(),
    steps: z.array(step),
  })
  .meta({ id: 'AbsorptionArea', description: 'Absorption area provided, compared with what was required' })

export const presentAbsorption = (it: AbsorptionAnswer): z.output<typeof absorptionAnswer> => ({
  counts: it.counts,
  providedSqFt: it.providedSqFt.value,
  expandedUncertaintySqFt: U(it.providedSqFt),
  ...presentUncertainty(it.providedSqFt, 'sq ft'),
  required: it.required && { ...it.required, citations: presentCitations(it.required.citations) },
  steps: presentSteps(it.steps),
})
