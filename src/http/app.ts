/**
 * The HTTP service: everything that is the same for every route. The routes themselves are plugins in
 * api/<resource>/, registered in routes.ts under /v1. A route is written like this:
 *
 *   import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
 *
 *   export const permits: FastifyPluginAsyncZod = async (app) => {
 *     app.post('/counties/:county/parcels/:parcel/permits', {
 *       config: { access: ['reviewer'], idempotent: true },
 *       schema: {
 *         summary: 'Enter a permit', tags: ['Permits'], operationId: 'enterPermit',
 *         params: parcelPath, body: permitEntry, response: { 201: permitAnswer },
 *       },
 *     }, async (request, reply) => {
 *       const permit = await enterPermit(request.context, request.actor, request.params.parcel, request.body)
 *       reply.code(201).header('location', `${request.url}/${permit.id}`)
 *       tagRevision(reply, permit.revision)
 *       return present(permit)
 *     })
 *   }
 *
 * - `config.access` says who may call it: roles, ALL_ROLES, or 'open'. A route without it stops the start, and one
 *   without a row in docs/access.md fails the tests.
 *   The county of the path is checked against the token before; `request.actor` is the caller in that county.
 * - Schemas are zod, examples by `.meta({ examples: [...] })`. Path, query and body are validated together and
 *   arrive as the schemas' outputs; what a response schema does not name is not sent. No `.transform()` in a
 *   response schema: it can't be described. Give a schema used twice an id: `.meta({ id: 'Permit' })`.
 * - `config.idempotent` for a POST that creates: the handler runs inside the transaction that also keeps the
 *   answer. Use `request.context.database`, return the answer, never call reply.send.
 * - `config.replaces` for a write that needs If-Match: `requireVersion(request)`, then compare in the operation.
 * - Lists: `...pageQuery` in the query, `pageOf(item)` in the response, `cursorFrom` and `pageFrom` between.
 * - Failures: `throw problem('conflict', { detail })`, `throw invalidInput(issues)`; a refusal of an operation is
 *   turned into one by an exhaustive switch in the route.
 */
import multipart from '@fastify/multipart'
import fastify, { type FastifyInstance } from 'fastify'
import type { ZodTypeProvider } from 'fastify-type-provider-zod'
import helmet from 'helmet'
import { uuidv7 } from 'uuidv7'
import { turningAway } from '../store/database/turn-away.ts'
import { callerFinder } from './access/caller.ts'
import { standAtDoor } from './access/door.ts'
import { requireCaller } from './access/require-caller.ts'
import { answerWithPages } from './pages/page-reply.ts'
import { pages } from './pages/pages.ts'
import { tellPerson } from './pages/problem/answer.ts'
import { PATIENCE } from './patience.ts'
import { describeApi } from './plugins/api-description.ts'
import { lastAnswers } from './plugins/closing.ts'
import { tagReads } from './plugins/entity-tag.ts'
import { answerErrors, answerFault } from './plugins/error-answers.ts'
import { limitGuesses } from './plugins/guesses.ts'
import { answerHealth } from './plugins/health.ts'
import { keepAnswers } from './plugins/idempotency.ts'
import { takeTurns } from './plugins/in-turn.ts'
import { limitLoad } from './plugins/limits.ts'
import { answerMetrics } from './plugins/metrics.ts'
import { takePlainRequests } from './plugins/plain-requests.ts'
import { explainProblems } from './plugins/problem-pages.ts'
import { publishKeys } from './plugins/published-keys.ts'
import { requestLog } from './plugins/request-log.ts'
import { serializeWithZod } from './plugins/serialization.ts'
import { traceRequests } from './plugins/traces.ts'
import { answerUnread } from './plugins/unread-requests.ts'
import { limitUploads } from './plugins/upload-bodies.ts'
import { validateWithZod } from './plugins/validation.ts'
import { problemSchema } from './problem.ts'
import { registerRoutes } from './routes.ts'
import type { HttpSettings, Services } from './services.ts'

export type App = FastifyInstance

/** Ready to listen or to be asked by `inject`. `routes` are the resources; tests may give their own. */
export async function buildApp(
  services: Services,
  routes = registerRoutes,
  patience = PATIENCE,
): Promise<App> {
  const { settings, clock, newId, files, jobs, letters, book, quotas, door, logger, traces } = services
  const database = turningAway(services.database)
  const app = fastify({
    ...(logger ? { loggerInstance: logger } : { logger: false }),
    genReqId: ({ headers }) => acceptableId(headers['x-request-id']) ?? uuidv7(),
    requestIdHeader: false,
    logController: requestLog(),
    frameworkErrors: (fault, request, reply) => void answerFault(fault, request, reply),
    trustProxy: trustedProxies(settings.TRUST_PROXY),
    bodyLimit: settings.BODY_LIMIT_KB * 1024,
    routerOptions: { maxParamLength: 200, ignoreTrailingSlash: false },
    http: { headersTimeout: patience.headersMs, connectionsCheckingInterval: patience.lookMs },
    requestTimeout: patience.requestMs,
    connectionTimeout: patience.silenceMs,
    clientErrorHandler: answerUnread,
    forceCloseConnections: 'idle',
    return503OnClosing: true,
  }).withTypeProvider<ZodTypeProvider>()

  answerErrors(app, tellPerson)
  validateWithZod(app)
  serializeWithZod(app, settings.ANSWERS)
  app.addHook('onRequest', async (request, reply) => void reply.header('x-request-id', request.id))
  traceRequests(app, traces)
  takePlainRequests(app)
  lastAnswers(app)
  const harden = helmet({
    contentSecurityPolicy: CONTENT_SECURITY,
    referrerPolicy: { policy: 'no-referrer' },
  })
  app.addHook('onRequest', ({ raw }, reply, done) =>
    harden(raw, reply.raw, (fault) => done(fault as Error | undefined)),
  )
  await app.register(multipart, {
    limits: { fileSize: settings.UPLOAD_LIMIT_MB * 1_048_576, files: 1, fields: 20, fieldSize: 65_536 },
  })
  limitUploads(app, settings.UPLOAD_LIMIT_MB * 1_048_576)
  standAtDoor(app, door)
  const finder = callerFinder(database, clock, door.watch)
  await limitLoad(app, { requestsPerMinute: settings.REQUESTS_PER_MINUTE, database, finder })
  requireCaller(app, finder)
  keepAnswers(app, { database, clock, newId, files, jobs, letters, book, ...(quotas ? { quotas } : {}) })
  takeTurns(app)
  limitGuesses(app, clock)
  tagReads(app)
  await describeApi(app)
  answerHealth(app, services)
  answerMetrics(app, services)
  explainProblems(app)
  publishKeys(app, database)
  await app.register(routes, { prefix: '/v1' })
  answerWithPages(app, { database, clock })
  await app.register(pages)
  await app.ready()
  return app
}

/** Nothing from elsewhere, nothing inline. Kept here, not per page: a page that needs more must argue for it. */
const CONTENT_SECURITY = {
  useDefaults: false,
  directives: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    imgSrc: ["'self'", 'data:'],
    fontSrc: ["'self'"],
    connectSrc: ["'self'"],
    manifestSrc: ["'self'"],
    workerSrc: ["'self'"],
    formAction: ["'self'"],
    baseUri: ["'none'"],
    frameAncestors: ["'none'"],
  },
}

/** So many proxies from here outwards, or those at these addresses: whoever stands before them is whoever asks. */
const trustedProxies = (trusted: HttpSettings['TRUST_PROXY']) =>
  typeof trusted === 'number' ? (_address: string, hop: number) => hop < trusted : trusted

const acceptableId = (sent: string | string[] | undefined): string | undefined =>
  typeof sent === 'string' && /^[\w.-]{8,64}$/.test(sent) ? sent : undefined

// The description of the API names it even where no route uses it by itself.
void problemSchema
