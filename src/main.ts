/** `npm start`: the whole service, until it is told to stop. */
import closeWithGrace from 'close-with-grace'
import { explain } from './cli/explain.ts'
import { settingsOrExit } from './config.ts'
import { createLogger } from './logger.ts'
import { startService } from './service.ts'

const settings = settingsOrExit()
const logger = createLogger(settings.LOG_LEVEL)
try {
  const service = await startService(settings, logger)
  closeWithGrace({ delay: settings.STOP_WITHIN_SECONDS * 1_000, logger }, async ({ err: fault, signal }) => {
    if (fault) logger.fatal({ err: fault }, 'stopping after a fault')
    else logger.info(`stopping: ${signal}`)
    await service.stop()
  })
  logger.info(`listening on ${service.address}`)
} catch (fault) {
  explain(fault)
  process.exit(1)
}
