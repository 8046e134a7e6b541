import { z } from 'zod'
import { mappingFaults } from '../../../operations/imports/check-mapping.ts'
import { line } from '../../../reading/entry/fields.ts'
import type { Rejection } from '../../../store/import-rejections.ts'
import { IMPORT_KINDS, IMPORT_STATES, type Import } from '../../../store/imports.ts'
import { id, instant } from '../shapes/basics.ts'

const cell = z.string().max(200)

/** What a person sends; the same comes back. */
export const mappingBody = z
  .strictObject({
    columns: z
      .array(
        z.strictObject({
          column: z.string().max(500).meta({ description: 'The heading in the file' }),
          to: line(160)
            .nullable()
            .meta({
              description:
                'What it fills: a field of the entry, `parcel`, `address`, `firm`, `reference.<field>`, or ' +
                '`components.<name>.<field>`; null passes the column over',
            }),
          unit: z.enum(['gal', 'L', 'ft', 'in', 'm', 'cm']).nullable().default(null).meta({
            description: 'Put behind a bare figure',
          }),
          values: z
            .record(cell, cell)
            .default({})
            .meta({ description: 'What words in the file mean, where they differ from ours' }),
        }),
      )
      .max(300),
    always: z
      .record(line(160), cell)
      .default({})
      .meta({ description: 'Values for rows that do not have their own' }),
  })
  .meta({
    id: 'ImportMappingEntry',
    examples: [
      {
        columns: [
          { column: 'PIN', to: 'parcel' },
          { column: 'PermitNum', to: 'number' },
          { column: 'WorkClass', to: 'kind', values: { New: 'new' } },
          { column: 'IssuedDate', to: 'issuedOn' },
          { column: 'CompletedDate', to: 'approvedOn' },
          { column: 'TankGal', to: 'components.tank.capacity', unit: 'gal' },
          { column: 'StatusCurrent', to: null },
        ],
        always: { kind: 'new' },
      },
    ],
  })

const mapping = z
  .object({
    columns: z.array(
      z.object({
        column: z.string(),
        to: z.string().nullable(),
        unit: z.string().nullable(),
        values: z.record(z.string(), z.string()),
      }),
    ),
    always: z.record(z.string(), z.string()),
  })
  .meta({ id: 'ImportMapping', description: 'Which column means what' })

export const importInList = z
  .object({
    id,
    kind: z.enum(IMPORT_KINDS),
    format: z.enum(['csv', 'ndjson']),
    fileName: z.string().nullable(),
    state: z.enum(IMPORT_STATES),
    madeAt: instant,
    endedAt: instant.nullable(),
  })
  .meta({ id: 'ImportInList', description: 'A file of many records' })

export const importRead = importInList
  .extend({
    reason: z.string().nullable().meta({ description: 'Why it failed' }),
    revision: z.int(),
    headings: z.array(z.string()),
    sample: z.array(z.array(z.string())).meta({ description: 'The first rows' }),
    mapping,
    mappingFaults: z
      .array(z.object({ pointer: z.string(), message: z.string() }))
      .meta({ description: 'What to fix in the mapping before it can run' }),
    rows: z.object({
      read: z.int(),
      added: z.int(),
      changed: z.int(),
      unchanged: z.int(),
      rejected: z.int(),
    }),
    job: id.nullable().meta({ description: 'The job to follow' }),
    rerun: id.nullable().meta({ description: 'The re-run that reconciles the parcels it changed' }),
  })
  .meta({ id: 'Import', description: 'A file of many records, what its columns mean, and its progress' })

export const presentInList = (it: Import): z.output<typeof importInList> => ({
  id: it.id,
  kind: it.kind,
  format: it.format,
  fileName: it.fileName,
  state: it.state,
  madeAt: it.madeAt.toISOString(),
  endedAt: it.endedAt?.toISOString() ?? null,
})

export const presentImport = (it: Import): z.output<typeof importRead> => ({
  ...presentInList(it),
  reason: it.reason,
  revision: it.revision,
  headings: [...it.head.headings],
  sample: it.head.sample.slice(0, 5).map((row) => [...row]),
  mapping: {
    columns: it.mapping.columns.map((column) => ({ ...column, values: { ...column.values } })),
    always: { ...it.mapping.always },
  },
  mappingFaults: [...mappingFaults(it.kind, it.head, it.mapping)],
  rows: {
    read: it.rowsRead,
    added: it.added,
    changed: it.changed,
    unchanged: it.unchanged,
    rejected: it.rejected,
  },
  job: it.job,
  rerun: it.rerun,
})

export const rejection = z
  .object({
    line: z.int().meta({ description: 'Counted from 1, headings included' }),
    cells: z.array(z.string()),
    faults: z.array(
      z.object({
        column: z.string().nullable(),
        had: z.string().nullable().meta({ description: 'The value in the file' }),
        wants: z.string().meta({ description: 'What is expected' }),
      }),
    ),
  })
  .meta({
    id: 'ImportRejection',
    description: 'A rejected row, with every fault',
  })

export const presentRejection = ({ line: at, cells, faults }: Rejection): z.output<typeof rejection> => ({
  line: at,
  cells: [...cells],
  faults: faults.map((fault) => ({ ...fault })),
})
