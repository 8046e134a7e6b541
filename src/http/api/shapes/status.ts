import { z } from 'zod'
import { DISCREPANCY_KINDS } from '../../../reconcile/kinds.ts'
import { ITEM_STATES, STATUS_WORDS } from '../../../reconcile/status.ts'
import type { DatedStatus } from '../../../store/statuses.ts'
import { statusWords } from '../../../words/agent/status.ts'
import type { Language } from '../../../words/language.ts'
import { day } from './basics.ts'

const item = z
  .object({
    kind: z.enum(DISCREPANCY_KINDS),
    about: z.string().meta({ description: 'The part, by a name of ours' }),
    says: z.string(),
    state: z.enum(ITEM_STATES).meta({ description: 'Whose turn it is' }),
    required: z.string().meta({ description: 'What has to be done' }),
    due: day.nullable().meta({ description: 'By when; null where no day is set' }),
  })
  .meta({ id: 'OpenItem', description: 'One thing that is open, whose turn it is, and what is required' })

const waived = z
  .object({
    kind: z.enum(DISCREPANCY_KINDS),
    about: z.string().meta({ description: 'The part, by a name of ours' }),
    says: z.string(),
    why: z.string().meta({ description: 'Why the county waived it, from a fixed list' }),
  })
  .meta({ id: 'WaivedItem', description: 'One thing that was not inspected and that the county waived' })

const system = z
  .object({
    name: z.string().meta({ description: 'What it serves, by a name of ours' }),
    word: z.enum(STATUS_WORDS),
    title: z.string(),
    sentence: z.string(),
    notes: z.array(z.string()).meta({ description: 'That it was not inspected, or that it is shared' }),
  })
  .meta({ id: 'SystemStatus', description: 'How one of several systems, or a shared one, stands' })

export const status = z
  .object({
    word: z.enum(STATUS_WORDS),
    title: z.string().meta({ description: 'The word as people read it' }),
    sentence: z.string(),
    items: z.array(item).meta({ description: 'What is open; those who must act come first' }),
    waived: z.array(waived).meta({ description: 'What was not inspected, where the county waived it' }),
    systems: z.array(system).meta({
      description: 'Each septic system, where the parcel has several or shares one; else empty',
    }),
    asOf: day,
  })
  .meta({
    id: 'Status',
    description:
      'A parcel in one word and one sentence, and what is open. The word follows from the items. Nothing private. Sentences are in English or, by Accept-Language, in Spanish.',
    examples: [
      {
        word: 'under-review',
        title: 'Under review',
        sentence: 'The county has questions about the septic system. It is looking into them.',
        items: [
          {
            kind: 'line-replaced-without-permit',
            about: 'Sewer line from the house',
            says: 'The sewer line from the house was replaced. The county has no permit for that work.',
            state: 'county-reviewing',
            required: 'The county will look for the permit, or require one.',
            due: null,
          },
        ],
        waived: [],
        systems: [],
        asOf: '2026-11-25',
      },
    ],
  })

export function presentStatus(dated: DatedStatus, language: Language = 'en'): z.output<typeof status> {
  const { word, title, sentence, items, waived, systems } = statusWords(dated, language)
  return {
    word,
    title,
    sentence,
    items: items.map(({ about, says, state, required, due }, at) => ({
      kind: dated.items[at]!.kind,
      about,
      says,
      state,
      required,
      due,
    })),
    waived: waived.map((it, at) => ({ kind: dated.waived[at]!.kind, ...it })),
    systems: systems.map(({ notes, ...it }) => ({ ...it, notes: [...notes] })),
    asOf: dated.asOf,
  }
}
