import { PERMIT_KINDS } from './choices.ts'
import type { Fields } from './field.ts'
import { REFERENCE } from './places.ts'

/** What one paper says of itself and of the whole system. Its components are in `component-fields.ts`. */
export const PERMIT_FIELDS = {
  number: {
    value: 'line',
    most: 60,
    by: 'permit',
    needed: true,
    example: '74-118',
    aliases: ['permit', 'permit number', 'permit no', 'PermitNum', 'permit id'],
  },
  kind: {
    value: 'choice',
    choices: PERMIT_KINDS,
    by: 'permit',
    needed: true,
    aliases: ['type', 'permit type', 'PermitTypeMapped', 'work', 'work type', 'WorkClass', 'WorkClassMapped'],
  },
  issuedOn: {
    value: 'partial-date',
    by: 'permit',
    example: '5/3/74',
    aliases: ['issued', 'issue date', 'date issued', 'IssuedDate', 'permit date'],
  },
  /** Final approval: only an approved permit builds anything. */
  approvedOn: {
    value: 'partial-date',
    by: 'permit',
    example: '1974-06-20',
    aliases: [
      'approved',
      'final',
      'finaled',
      'final date',
      'final approval',
      'date approved',
      'approval date',
      'date inspected',
      'CompletedDate',
    ],
  },
  bedrooms: {
    value: 'whole',
    possible: [0, 50],
    plausible: [1, 8],
    by: 'permit',
    asBuilt: 'design',
    example: 3,
    aliases: ['beds', 'br', 'bdrms', 'no bedrooms', 'number of bedrooms'],
  },
  designFlowGpd: {
    value: 'number',
    unit: 'gpd',
    possible: [0, 100_000],
    open: 'least',
    plausible: [75, 3000],
    by: 'permit',
    asBuilt: 'design',
    example: 450,
    aliases: ['flow', 'design flow', 'gpd', 'gallons per day'],
  },
  percRateMpi: {
    value: 'number',
    unit: 'min/in',
    possible: [0, 1000],
    open: 'least',
    plausible: [0.5, 240],
    by: 'permit',
    asBuilt: 'site',
    example: 12,
    aliases: ['perc', 'perc rate', 'mpi', 'min per inch', 'percolation rate'],
  },
  soilTexture: {
    value: 'line',
    most: 80,
    by: 'permit',
    asBuilt: 'site',
    example: 'sandy loam',
    aliases: ['soil', 'soil type'],
  },
  reference: REFERENCE,
  remarks: { value: 'prose', most: 10_000, by: 'permit', aliases: ['notes', 'comments', 'Description'] },
} as const satisfies Fields
