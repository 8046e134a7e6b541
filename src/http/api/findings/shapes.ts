import { z } from 'zod'
import type { FindingsRead } from '../../../operations/findings/read-findings.ts'
import { findingsAsWritten } from '../../../reading/entry/written.ts'
import type { Findings } from '../../../store/findings.ts'
import { id, instant } from '../shapes/basics.ts'
import { writtenEntry } from '../shapes/entries.ts'
import { findingsRecord, presentFindingsRecord } from '../shapes/findings-record.ts'

export const findings = z
  .object({
    id,
    parcel: id,
    system: id.meta({ description: 'The system that was inspected; a parcel’s own has the parcel’s id' }),
    firm: z.object({ id, name: z.string().nullable() }),
    state: z.enum(['draft', 'submitted']),
    revision: z.number(),
    record: findingsRecord,
    entry: writtenEntry.meta({ description: 'The same as typed: the format that a change takes' }),
    amends: id.nullable().meta({ description: 'The submitted findings that these replace' }),
    amendedBy: id.nullable().meta({ description: 'The submitted findings that replaced these' }),
    createdAt: instant,
    changedAt: instant,
    submittedAt: instant.nullable(),
  })
  .meta({ id: 'Findings', description: 'One inspection by one firm' })

export const presentFindings = (it: Findings & Partial<Pick<FindingsRead, 'firmName'>>) =>
  ({
    id: it.id,
    parcel: it.parcel,
    system: it.system,
    firm: { id: it.organization, name: it.firmName ?? null },
    state: it.state,
    revision: it.revision,
    record: presentFindingsRecord(it.record),
    entry: { ...findingsAsWritten(it.record) },
    amends: it.amends,
    amendedBy: it.amendedBy,
    createdAt: it.createdAt.toISOString(),
    changedAt: it.changedAt.toISOString(),
    submittedAt: it.submittedAt?.toISOString() ?? null,
  }) satisfies z.output<typeof findings>
