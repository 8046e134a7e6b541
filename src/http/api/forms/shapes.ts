import { z } from 'zod'
import type { FormRead } from '../../../operations/forms/read-forms.ts'
import { fieldsOn, taughtForm } from '../../../reading/family/taught-form.ts'
import { isDropped, witnessedOf } from '../../../reading/family/witness.ts'
import { FORM_STATES, type FormOnFile } from '../../../store/taught-forms.ts'
import { id, instant } from '../shapes/basics.ts'

const box = { x: 0.12, y: 0.2, w: 0.1, h: 0.02 }
export const taughtExample = {
  version: 1 as const,
  papers: 3,
  sheets: [
    {
      widthPt: 612,
      heightPt: 792,
      marks: [{ text: 'Capacity', box: { x: 0.04, y: 0.2, w: 0.07, h: 0.014 } }],
      fields: [
        {
          ask: 'capacity' as const,
          kind: 'tank' as const,
          unit: 'gal' as const,
          box,
          left: 0.12,
          captions: [],
          papers: 3,
        },
      ],
    },
  ],
}

export const taught = taughtForm.meta({
  id: 'TaughtForm',
  description:
    'A learned layout: the printed words that identify it (`marks`) and where each value is (`fields`), sheet by ' +
    'sheet. Boxes are fractions of the sheet, upright, origin at the top left.',
  examples: [taughtExample],
})

const told = {
  id,
  name: z.string(),
  state: z.enum(FORM_STATES).meta({
    description:
      '`proposed`: learned or brought, and reads nothing until a person takes it up; `in-force`: papers are read by it; ' +
      '`withdrawn`: kept, and reads nothing',
  }),
  papers: z.number().meta({ description: 'How many confirmed documents it was learned from' }),
  fields: z.number().meta({ description: 'How many fields it can locate' }),
  revision: z.number(),
  madeAt: instant,
  changedAt: instant,
  changedBy: id.nullable().meta({ description: 'Null where the service proposed it' }),
}

export const formInList = z
  .object(told)
  .meta({ id: 'TaughtFormInList', description: 'A form layout learned from documents' })

export const presentFormInList = (it: FormOnFile): z.output<typeof formInList> => ({
  id: it.id,
  name: it.name,
  state: it.state,
  papers: it.taught.papers,
  fields: it.taught.sheets.reduce((sum, sheet) => sum + fieldsOn(sheet).length, 0),
  revision: it.revision,
  madeAt: it.madeAt.toISOString(),
  changedAt: it.changedAt.toISOString(),
  changedBy: it.changedBy,
})

export const form = z
  .object({
    ...told,
    taught,
    shownOn: z
      .object({ document: id, pages: z.array(z.number()) })
      .nullable()
      .meta({
        description: 'The document whose pages the boxes are on; null if imported',
      }),
    held: z
      .array(
        z.object({
          ask: z.string(),
          kind: z.string().nullable(),
          agreed: z.number(),
          contradicted: z.number(),
          dropped: z.boolean(),
        }),
      )
      .meta({
        description:
          'Each field against the permits confirmed while the layout was in use. `dropped`: they contradict it, and it ' +
          'is no longer read',
      }),
    taughtBy: z.array(z.object({ document: id, transcription: id, permit: z.number() })).meta({
      description: 'The confirmed permits that it was learned from',
    }),
  })
  .meta({
    id: 'TaughtFormWhole',
    description: 'A learned form layout in full, with the documents it was learned from',
  })

export const presentForm = ({ form: it, teachers, witnessed }: FormRead): z.output<typeof form> => ({
  ...presentFormInList(it),
  taught: it.taught,
  shownOn: it.shownOn === null ? null : { document: it.shownOn, pages: [...it.shownPages] },
  held: it.taught.sheets.flatMap(fieldsOn).flatMap((field) => {
    const own = witnessedOf(field, witnessed)
    return own.agreed + own.contradicted === 0 ? [] : [{ ...own, dropped: isDropped(field, own) }]
  }),
  taughtBy: teachers.map(({ document, transcription, permit }) => ({ document, transcription, permit })),
})

/** A form as it travels from county to county. */
export const exportedForm = z.strictObject({ name: z.string().max(200), taught }).meta({
  id: 'TaughtFormExported',
  description: 'A learned form layout, exported to be imported in another system',
  examples: [{ name: 'Sewage disposal installation record', taught: taughtExample }],
})
