import { z } from 'zod'
import type { SessionListed } from '../../../store/access/sessions.ts'
import { id, instant } from '../shapes/basics.ts'

export const session = z
  .object({
    id,
    browser: z
      .string()
      .nullable()
      .meta({ examples: ['Firefox on Windows'] }),
    begunAt: instant,
    lastUsedAt: instant.meta({ description: 'To the minute' }),
    endsAt: instant.meta({ description: 'At the latest; it ends sooner when unused' }),
    current: z.boolean().meta({ description: 'The session of this request' }),
  })
  .meta({ id: 'Session', description: 'A signed-in browser' })

export const presentSession = (it: SessionListed, current: string | null): z.output<typeof session> => ({
  id: it.id,
  browser: it.browser,
  begunAt: it.begunAt.toISOString(),
  lastUsedAt: it.lastUsedAt.toISOString(),
  endsAt: it.endsAt.toISOString(),
  current: it.id === current,
})
