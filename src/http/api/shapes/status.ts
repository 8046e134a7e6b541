import { z } from 'zod'
import { ACTORS } from '../../../reconcile/meaning/meaning.ts'
import { STATUS_WORDS } from '../../../reconcile/status.ts'
import type { DatedStatus } from '../../../store/statuses.ts'
import { day } from './basics.ts'

export const status = z
  .object({
    word: z.enum(STATUS_WORDS),
    sentence: z.string(),
    outstanding: z.array(z.object({ says: z.string(), who: z.enum(ACTORS), what: z.string() })),
    asOf: day,
  })
  .meta({
    id: 'Status',
    description:
      'A parcel in one word and one sentence, what is outstanding and who has to act; nothing private',
    examples: [
      {
        word: 'under-review',
        sentence: 'There are questions about the septic system that the county is looking at.',
        outstanding: [
          {
            says: 'A line was replaced, and the county has no permit for that work. The county has to look at it.',
            who: 'reviewer',
            what: 'find the permit, or require one for the work done',
          },
        ],
        asOf: '2026-11-25',
      },
    ],
  })

export const presentStatus = ({
  word,
  sentence,
  outstanding,
  asOf,
}: DatedStatus): z.output<typeof status> => ({
  word,
  sentence,
  outstanding: outstanding.map(({ says, who, what }) => ({ says, who, what })),
  asOf,
})
