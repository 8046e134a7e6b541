/** `npm run demo`: the whole service with the invented Quillback County in it, on a data folder of its own. */
import closeWithGrace from 'close-with-grace'
import { dayOf } from '../base/plain-date.ts'
import { settingsOrExit } from '../config.ts'
import { createLogger } from '../logger.ts'
import { startService } from '../service.ts'
import { type Cast, enrolCast, tokenFor } from './demonstration/enrol.ts'
import { guide } from './demonstration/guide.ts'
import { loadStories } from './demonstration/load.ts'
import { loadPapers } from './demonstration/load-papers.ts'
import { readStories } from './demonstration/read-stories.ts'
import { signInFor } from './demonstration/sign-in-for.ts'
import { explain } from './explain.ts'

const { env } = process
const settings = settingsOrExit({
  ...env,
  ASFOUND_DATA: env.ASFOUND_DATA || '.data/demo',
  LOG_LEVEL: env.LOG_LEVEL || 'warn',
})
const logger = createLogger(settings.LOG_LEVEL)
try {
  const set: { cast?: Cast; loaded: number } = { loaded: 0 }
  const service = await startService(settings, logger, async (services) => {
    set.cast = await enrolCast(services.database)
    set.loaded = await loadStories(services, set.cast, readStories())
    await loadPapers(services, set.cast)
  })
  closeWithGrace({ delay: settings.STOP_WITHIN_SECONDS * 1_000, logger }, async ({ err: fault }) => {
    if (fault) logger.fatal({ err: fault }, 'stopping after a fault')
    await service.stop()
  })
  const { database, clock } = service.services
  const { reviewer, firms, agent } = set.cast!
  const now = clock()
  const tokens = {
    reviewer: await tokenFor(database, reviewer, now),
    firm: await tokenFor(database, firms.upland, now),
    agent: await tokenFor(database, agent, now),
  }
  const signIns = {
    reviewer: await signInFor(database, reviewer, 'reviewer'),
    firm: await signInFor(database, firms.upland, 'firm'),
    agent: await signInFor(database, agent, 'agent'),
  }
  const { address } = service
  process.stdout.write(
    guide({
      address,
      dataFolder: settings.ASFOUND_DATA,
      loaded: set.loaded,
      tokens,
      signIns,
      today: dayOf(now),
    }),
  )
} catch (fault) {
  explain(fault)
  process.exit(1)
}
