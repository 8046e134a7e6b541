import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import type { Logger } from 'pino'
import manifest from '../package.json' with { type: 'json' }
import { OutsideFailure } from './base/outside-failure.ts'
import { must } from './base/result.ts'
import { quotasOf, type Settings } from './config.ts'
import { openOriginals } from './files/originals.ts'
import { loadRuleBook } from './files/rule-packs.ts'
import { readSignInProviders } from './files/sign-in-providers.ts'
import type { Door } from './http/access/door.ts'
import { buildApp } from './http/app.ts'
import type { Services } from './http/services.ts'
import { prepareDatabase } from './jobs/prepare-database.ts'
import { openJobs } from './jobs/start.ts'
import { type OpenLetters, openLetters } from './letters/letters.ts'
import { signingKey } from './letters/signing/key-source.ts'
import { openProvider } from './net/sign-in-provider.ts'
import type { Traces } from './net/tracing/traces.ts'
import { jobHandlers } from './operations/job-handlers.ts'
import { keepDelivering } from './operations/subscriptions/keep-delivering.ts'
import { keepForgetting } from './operations/upkeep/keep-forgetting.ts'
import { keepLookingThrough } from './operations/upkeep/look-through-originals.ts'
import { keepNoting } from './operations/upkeep/note-heads.ts'
import { childrenReachNetwork } from './scan/without-network.ts'
import { openVault } from './store/access/vault.ts'
import { watchAccess } from './store/access/watch-access.ts'
import { type OpenDatabase, openDatabase } from './store/database/database.ts'
import { reachServer } from './store/database/server.ts'
import { administer } from './store/database/transact.ts'
import { newId } from './store/new-id.ts'
import { registerSigningKey } from './store/signing-keys.ts'

export type RunningService = {
  readonly address: string
  readonly services: Services
  /** In the reverse order of the start: no new requests, those inside finish, then jobs, then the database. */
  readonly stop: () => Promise<void>
}

type Before = (services: Services) => Promise<void>

/**
 * Starts the whole service: database, migrations, jobs, HTTP. `before` runs when all but HTTP is up, as the
 * demonstration's loading does. Throws OutsideFailure or MigrationRefusal, with everything stopped again.
 */
export async function startService(
  settings: Settings,
  logger: Logger,
  before?: Before,
): Promise<RunningService> {
  const undo: (() => Promise<void> | void)[] = []
  const stop = async () => {
    for (const step of undo.splice(0).reverse()) {
      try {
        await step()
      } catch (fault) {
        // What is left is stopped all the same.
        logger.error({ err: fault }, 'a step of the stop failed')
      }
    }
  }
  const onTrouble = (fault: Error) => logger.warn({ err: fault }, 'trouble')
  try {
    const traces = await openTracesOf(settings)
    undo.push(() => traces?.close())
    const reached = () =>
      reachServer({
        url: settings.DATABASE_URL,
        dataFolder: settings.ASFOUND_DATA,
        onTrouble: (message) => logger.error(message),
      })
    const server = await patiently(reached, logger)
    undo.push(server.release)
    if (settings.MIGRATE) {
      const ran = await patiently(() => prepareDatabase(server.url), logger)
      logger.info({ ran }, `database ready: ${server.says}`)
    }
    const database = openDatabase({
      url: server.url,
      maxConnections: settings.DATABASE_CONNECTIONS,
      onTrouble,
      traces,
    })
    undo.push(database.close)
    const clock = () => new Date()
    const atOnce = settings.JOBS_AT_ONCE
    const jobOptions = { url: server.url, database, clock, newId, atOnce, onTrouble, traces }
    const jobs = await patiently(() => openJobs(jobOptions), logger)
    undo.push(() => jobs.stop((settings.STOP_WITHIN_SECONDS * 1_000) / 2))
    const files = await openOriginals(path.join(settings.ASFOUND_DATA, 'originals'))
    // A pack that can't be read is a fault of the installation: `npm run rules:check` shows it line by line.
    const book = must(await loadRuleBook())
    const letters = await patiently(() => openLettersOf(settings, database, clock), logger)
    undo.push(letters.close)
    const door = await openDoor(settings, server.url, onTrouble)
    undo.push(() => door.watch?.close())
    const services: Services = {
      ...{ database, clock, newId, files, jobs, letters, book, settings, door, logger, traces },
      quotas: quotasOf(settings),
    }
    await patiently(() => tellWhatIsKnown(services, logger), logger)
    await before?.(services)
    if (settings.JOBS) {
      await jobs.work(jobHandlers(services))
      undo.push(keepDelivering(services, { vault: door.vault, onTrouble }))
      undo.push(keepForgetting(database, { onTrouble }))
      undo.push(keepLookingThrough(services, { onTrouble }))
      const { AUDIT_NOTES_FILE: file, AUDIT_NOTES_URL: notesUrl } = settings
      const noted = { file, url: notesUrl, key: await signingKey(keySourceOf(settings)) }
      undo.push(keepNoting(services, noted, { onTrouble }) ?? (() => {}))
    }
    const app = await buildApp(services)
    undo.push(() => app.close())
    const address = await app.listen({ host: settings.HOST, port: settings.PORT })
    return { address, services, stop }
  } catch (fault) {
    await stop()
    throw fault
  }
}

/** Loaded where a receiver is set, and nowhere else. */
async function openTracesOf(settings: Settings): Promise<Traces | undefined> {
  const { OTEL_EXPORTER_OTLP_ENDPOINT: endpoint, OTEL_TRACES_SAMPLER_ARG: share } = settings
  if (endpoint === undefined) return undefined
  const { openTraces } = await import('./net/tracing/open-traces.ts')
  return openTraces({ endpoint, share, version: manifest.version })
}

async function openDoor(settings: Settings, url: string, onTrouble: (fault: Error) => void): Promise<Door> {
  const { ASFOUND_ACCESS_KEY: key, ASFOUND_ACCESS_KEY_FILE: file, ASFOUND_DATA: dataFolder } = settings
  const vault = await openVault({ key, file, dataFolder })
  const providers = await readSignInProviders(settings.SIGN_IN_PROVIDERS_FILE)
  return {
    vault,
    providers: new Map(providers.map((provider) => [provider.county, openProvider(provider)])),
    watch: watchAccess({ url, onTrouble }),
    publicAddress: settings.PUBLIC_ADDRESS,
  }
}

/** What whoever runs the service should know from the first line of its log on. */
async function tellWhatIsKnown({ database }: Services, logger: Logger): Promise<void> {
  const [known] = await administer(database, (tx) =>
    tx
      .selectFrom('audit_break')
      .select((eb) => eb.fn.countAll<number>().as('count'))
      .execute(),
  )
  if (known && Number(known.count) > 0)
    logger.error(
      `the audit of this database was broken when it was restored (places: ${known.count}): npm run audit:verify names them`,
    )
  if (await childrenReachNetwork())
    logger.warn(
      'this machine allows no network namespace: the processes that read strangers’ files could reach the network (docs/security.md)',
    )
}

const keySourceOf = (settings: Settings) => ({
  pem: settings.ASFOUND_SIGNING_KEY,
  file: settings.ASFOUND_SIGNING_KEY_FILE,
  dataFolder: settings.ASFOUND_DATA,
})

/** The key is published before it has sealed anything, so that whoever gets its first letter can check it. */
async function openLettersOf(
  settings: Settings,
  database: OpenDatabase,
  clock: () => Date,
): Promise<OpenLetters> {
  const letters = await openLetters(
    keySourceOf(settings),
    settings.PUBLIC_ADDRESS ?? `http://localhost:${settings.PORT}`,
  )
  await administer(database, (tx) => registerSigningKey(tx, letters.signer.publicKey, clock()))
  return letters
}

/** A database that is started together with this process may need a moment longer. */
async function patiently<T>(work: () => Promise<T>, logger: Logger): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await work()
    } catch (fault) {
      const waitingHelps = fault instanceof OutsideFailure && fault.retryAfterSeconds !== undefined
      if (!waitingHelps || attempt === 30) throw fault
      logger.warn({ err: fault }, 'waiting for the database')
      await wait(1_000)
    }
  }
}
