import { z } from 'zod'
import { STATED_FIELDS } from '../../../catalog/catalog.ts'
import { PERMIT_FIELDS } from '../../../catalog/permit-fields.ts'
import type { PermitRecord } from '../../../records/permit.ts'
import { answerShape, presentFields } from './fields.ts'

export const permitRecord = z
  .object({
    ...answerShape(PERMIT_FIELDS, 'stated', 'permit'),
    components: z.array(z.object(answerShape(STATED_FIELDS, 'stated', 'component'))),
    unreadable: z.array(z.object({ pointer: z.string(), note: z.string() })),
  })
  .meta({ id: 'PermitRecord', description: 'What the document says, as confirmed by a person' })

export const presentPermitRecord = (record: PermitRecord): z.output<typeof permitRecord> => ({
  ...presentFields(PERMIT_FIELDS, 'stated', record),
  components: record.components.map((stated) => presentFields(STATED_FIELDS, 'stated', stated)),
  unreadable: record.unreadable.map(({ pointer, note }) => ({ pointer, note })),
})
