import { leftOutUnsaid } from '../../../brief/submission/left-out.ts'
import { notReady } from '../../../brief/submission/not-ready.ts'
import type { FindingsRecord } from '../../../records/findings.ts'
import type { ReckonWith } from '../live/reckon.ts'
import { placedFaults } from './placed-faults.ts'
import type { Faults } from './read.ts'
import type { InspectionForm } from './typed.ts'

/** What the service would ask for before it takes the inspection, each at its step and field, asked without it. */
export function unsaidFaults(
  record: FindingsRecord,
  form: InspectionForm,
  { findings: id, firm, ...input }: ReckonWith,
): Faults {
  const own = notReady(record)
  const findings = { id, firm, submittedOn: input.asOf, record }
  return placedFaults(own.length > 0 ? own : leftOutUnsaid({ ...input, findings: null }, findings), form)
}
