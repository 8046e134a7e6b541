import { z } from 'zod'
import { printWithU } from '../../../measure/print/gallons.ts'
import { budget, COVERAGE, expanded, type Uncertain } from '../../../measure/uncertain.ts'
import { dateEntry } from '../../../reading/entry/quantity.ts'
import type { Citation } from '../../../rules/citation.ts'

/** Pieces that several calculations share. */

export const ruleQuestion = {
  rules: z
    .string()
    .max(40)
    .meta({ description: 'Whose rules: a place in /v1/rules', examples: ['quillback'] }),
  on: dateEntry.optional().meta({
    description: 'The day whose rules apply; default today',
    examples: ['1974-06-20'],
  }),
}

export const budgetShare = z
  .object({ cause: z.string(), percentOfVariance: z.number() })
  .meta({ id: 'BudgetShare', description: 'What one cause contributes to the uncertainty' })

/** What is the same for every uncertain value: the factor, the words and the budget. */
export const uncertainty = {
  coverageFactor: z.literal(COVERAGE).meta({ description: 'k: the expanded uncertainty holds about 95 %' }),
  says: z.string().meta({ examples: ['1,016 ± 24 gal'] }),
  budget: z.array(budgetShare).meta({ description: 'Largest first (JCGM 100:2008)' }),
}

export const presentUncertainty = (value: Uncertain, unit: string) => ({
  coverageFactor: COVERAGE as 2,
  says: printWithU(value, unit),
  budget: budget(value).map(({ cause, share }) => ({ cause, percentOfVariance: 100 * share })),
})

export const U = (value: Uncertain): number => expanded(value)

export const presentSteps = (
  steps: readonly {
    readonly says: string
    readonly formula: string
    readonly numbers: string
    readonly result: string
  }[],
) => steps.map(({ says, formula, numbers, result }) => ({ says, formula, numbers, result }))

export const presentCitations = (citations: readonly Citation[]) => citations.map((it) => ({ ...it }))
