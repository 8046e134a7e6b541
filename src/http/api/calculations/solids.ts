import { z } from 'zod'
import { FOUND } from '../../../catalog/component-findings.ts'
import { MEASURES } from '../../../catalog/component-measures.ts'
import type { FieldOf } from '../../../catalog/field.ts'
import { SOLIDS_VERDICTS } from '../../../geometry/solids/solids-rule.ts'
import type { SolidsAnswers } from '../../../operations/calculations/solids.ts'
import { foundField } from '../../../reading/entry/found-field.ts'
import { citation, day, step } from '../shapes/basics.ts'
import { presentCitations, presentSteps, ruleQuestion, U } from './shapes.ts'

const { sludgeDepth, scumThickness, scumBottomBelow, outletDeviceBelow, outletDeviceAbove } = FOUND
const rod = (field: FieldOf<'length'>) => foundField(field, 'tank', 'sounding-rod').optional()
const rule = (field: FieldOf<'length'>) => foundField(field, 'tank', 'liquid-level-rule').optional()

export const solidsBody = z
  .strictObject({
    ...ruleQuestion,
    readings: z
      .strictObject({
        liquidDepth: rod(MEASURES.liquidDepth),
        sludgeThickness: rod(sludgeDepth),
        scumThickness: rod(scumThickness),
        scumTopAboveLiquid: rule(scumThickness),
        scumBottomBelowLiquid: rod(scumBottomBelow),
        outletBottomBelowLiquid: rule(outletDeviceBelow).meta({
          description: 'Lower end of the outlet device below the liquid',
        }),
        outletTopAboveLiquid: rule(outletDeviceAbove).meta({ description: 'Its upper end above the liquid' }),
      })
      .meta({
        description: 'All against the liquid standing at the outlet invert; what was not read is left out',
      }),
    nominalGal: z.number().positive().max(100_000).optional(),
  })
  .meta({
    id: 'SolidsQuestion',
    description: 'Measured from above, through the opening. Never lean in, never go in: the gases kill.',
    examples: [
      {
        rules: 'quillback',
        readings: {
          liquidDepth: '48 in',
          sludgeThickness: '14 in',
          scumThickness: '5 in',
          scumBottomBelowLiquid: '3 in',
          outletBottomBelowLiquid: '18 in',
        },
        nominalGal: 1000,
      },
    ],
  })

export const solidsAnswer = z
  .object({
    on: day,
    silence: z.string().nullable(),
    rules: z
      .array(
        z.object({
          rule: z.string(),
          name: z.string(),
          verdict: z.enum(SOLIDS_VERDICTS),
          conditions: z.array(
            z.object({
              when: z.string(),
              verdict: z.enum(SOLIDS_VERDICTS),
              unit: z.enum(['in', '%']),
              found: z.number().nullable(),
              expandedUncertainty: z.number().nullable(),
              limit: z.number().nullable(),
              lacking: z.array(z.string()).meta({ description: 'The measurements that are missing' }),
            }),
          ),
          steps: z.array(step),
          citations: z.array(citation),
        }),
      )
      .meta({ description: 'Rules contradict each other, so each answers under its own name' }),
  })
  .meta({ id: 'Solids', description: 'Whether scum and sludge require pumping' })

export const presentSolids = ({ on, silence, rules }: SolidsAnswers): z.output<typeof solidsAnswer> => ({
  on,
  silence,
  rules: rules.map((it) => ({
    rule: it.rule,
    name: it.name,
    verdict: it.verdict,
    conditions: it.conditions.map(({ condition, verdict, found, limit, lacking }) => ({
      when: condition.when,
      verdict,
      unit: condition.when === 'share-above' ? '%' : 'in',
      found: found?.value ?? null,
      expandedUncertainty: found && U(found),
      limit,
      lacking: [...lacking],
    })),
    steps: presentSteps(it.steps),
    citations: presentCitations(it.citations),
  })),
})
