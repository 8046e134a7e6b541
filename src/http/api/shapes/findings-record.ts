import { z } from 'zod'
import { FOUND_FIELDS } from '../../../catalog/catalog.ts'
import { INSPECTION_FIELDS } from '../../../catalog/inspection-fields.ts'
import type { FindingsRecord } from '../../../records/findings.ts'
import { answerShape, presentFields } from './fields.ts'

const foundComponent = z
  .object(answerShape(FOUND_FIELDS, 'found', 'component'))
  .meta({ id: 'FoundComponent' })

export const findingsRecord = z
  .object({
    ...answerShape(INSPECTION_FIELDS, 'found', 'inspection'),
    components: z.array(foundComponent),
  })
  .meta({ id: 'FindingsRecord', description: 'What one inspection found' })

export const presentFindingsRecord = (record: FindingsRecord): z.output<typeof findingsRecord> => ({
  ...presentFields(INSPECTION_FIELDS, 'found', record),
  components: record.components.map((found) => presentFields(FOUND_FIELDS, 'found', found)),
})
