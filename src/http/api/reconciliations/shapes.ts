import { z } from 'zod'
import type { ReconciliationRead } from '../../../operations/reconciliation/read-reconciliation.ts'
import { type InputsNamed, OCCASIONS, type ReconciliationInList } from '../../../store/reconciliations.ts'
import { day, hash, id, instant } from '../shapes/basics.ts'
import { change, presentChange } from '../shapes/changes.ts'
import { presentResult, reconciliationResult } from '../shapes/outcome.ts'

const systemGiven = z.object({
  id,
  revision: z.number(),
  oneOfSeveral: z.boolean(),
  liesElsewhere: z.boolean(),
  serves: z.array(
    z.object({
      parcel: z.string(),
      permits: z.array(id),
      bedrooms: z.number().nullable(),
      designFlowGpd: z.number().nullable(),
    }),
  ),
})

const inputs = z.object({
  county: z.string(),
  place: z.string().meta({ description: 'Whose rules' }),
  asOf: day,
  permits: z.array(z.object({ id, revision: z.number(), hash })),
  corrections: z.array(z.object({ decision: id, hash })),
  findings: z.object({ id, hash }).nullable(),
  ruleBook: hash,
  system: systemGiven.optional().meta({
    description: 'Where there is more to it than the only system of one parcel',
  }),
})

const told = {
  id,
  parcel: z.object({ id, number: z.string() }),
  system: id.meta({ description: 'The system; a parcel’s own has the parcel’s id' }),
  occasion: z.enum(OCCASIONS).meta({ description: 'What triggered it' }),
  madeAt: instant,
  engine: z.string().meta({ description: 'The version of Asfound that made it' }),
  resultHash: hash,
}

export const reconciliation = z
  .object({
    ...told,
    inputs: inputs.meta({ description: 'All it was computed from, by id and hash' }),
    inputHash: hash,
    result: reconciliationResult,
    changes: z.array(change).meta({ description: 'Against the one before it' }),
  })
  .meta({
    id: 'Reconciliation',
    description:
      'As-built against as-found, as it was made; it never changes. Not a legal finding: local codes and licensed ' +
      'practice govern.',
  })

export const presentReconciliation = ({
  parcel,
  reconciliation: it,
  result,
  changes,
}: ReconciliationRead): z.output<typeof reconciliation> => ({
  id: it.id,
  parcel: { id: parcel.id, number: parcel.number },
  system: it.system,
  occasion: it.occasion,
  madeAt: it.madeAt.toISOString(),
  engine: it.engine,
  resultHash: it.resultHash,
  inputs: {
    ...plainInputs(it.inputs),
    permits: it.inputs.permits.map((permit) => ({ ...permit })),
    corrections: it.inputs.corrections.map((correction) => ({ ...correction })),
    findings: it.inputs.findings && { ...it.inputs.findings },
  },
  inputHash: it.inputHash,
  result: presentResult(result),
  changes: changes.map(presentChange),
})

const plainInputs = ({ system, ...rest }: InputsNamed) => ({
  ...rest,
  ...(system
    ? { system: { ...system, serves: system.serves.map((it) => ({ ...it, permits: [...it.permits] })) } }
    : {}),
})

export const reconciliationInList = z
  .object({
    id,
    system: id,
    findings: id.nullable(),
    occasion: told.occasion,
    madeAt: instant,
    engine: told.engine,
    resultHash: hash,
  })
  .meta({ id: 'ReconciliationInList' })

export const presentInList = (it: ReconciliationInList): z.output<typeof reconciliationInList> => ({
  id: it.id,
  system: it.system,
  findings: it.findings,
  occasion: it.occasion,
  madeAt: it.madeAt.toISOString(),
  engine: it.engine,
  resultHash: it.resultHash,
})
