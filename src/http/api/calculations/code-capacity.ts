import { z } from 'zod'
import { PERMIT_FIELDS } from '../../../catalog/permit-fields.ts'
import { BUILDING_USES, type CodeCapacityAnswer } from '../../../operations/calculations/code-capacity.ts'
import { numberEntry } from '../../../reading/entry/number-entry.ts'
import { VERIFIED } from '../../../rules/citation.ts'
import { BURDENS } from '../../../rules/values/capacity-rule.ts'
import { citation, day, step } from '../shapes/basics.ts'
import { presentCitations, presentSteps, ruleQuestion } from './shapes.ts'

/** A restaurant or a school has more than any house, so nothing is usual. */
const { plausible: _, ...anyFlow } = PERMIT_FIELDS.designFlowGpd

export const codeCapacityBody = z
  .strictObject({
    ...ruleQuestion,
    use: z.enum(BUILDING_USES).default('dwelling').meta({
      description: 'A dwelling, or a building that is none (a restaurant, a school), which goes by its flow',
    }),
    bedrooms: numberEntry(PERMIT_FIELDS.bedrooms).optional(),
    flowGpd: numberEntry(anyFlow).optional().meta({ description: 'Daily design flow, gallons' }),
    burdens: z.array(z.enum(BURDENS)).max(BURDENS.length).default([]).meta({
      description: 'What raises the requirement in the table',
    }),
  })
  .meta({
    id: 'CodeCapacityQuestion',
    examples: [{ rules: 'quillback', on: '1974-06-20', bedrooms: 3 }],
  })

export const ruleState = z.enum(['in-force', 'not-yet', 'ended', 'no-record'])

export const codeCapacityAnswer = z
  .object({
    on: day,
    state: ruleState,
    requiredGal: z.number().nullable(),
    silence: z.string().nullable().meta({ description: 'Why there is no figure' }),
    pack: z.string().nullable(),
    verified: z.enum(VERIFIED).nullable().meta({ description: 'The weakest of its citations' }),
    steps: z.array(step),
    citations: z.array(citation),
    overridden: z.array(z.string()).meta({ description: 'Packs that it overrides' }),
  })
  .meta({ id: 'CodeCapacity', description: 'The minimum capacity that a code required on a day' })

export const presentCodeCapacity = (it: CodeCapacityAnswer): z.output<typeof codeCapacityAnswer> => ({
  on: it.on,
  state: it.state,
  requiredGal: it.requiredGal,
  silence: it.silence,
  pack: it.pack,
  verified: it.verified,
  steps: presentSteps(it.steps),
  citations: presentCitations(it.citations),
  overridden: [...it.overridden],
})
