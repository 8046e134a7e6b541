import type { FastifyBaseLogger } from 'fastify'
import type { Traces } from '../net/tracing/traces.ts'
import type { OperationContext } from '../operations/context.ts'
import type { OpenDatabase } from '../store/database/database.ts'
import type { Door } from './access/door.ts'

/** The settings that are about answering; docs/settings.md says what each is for. */
export type HttpSettings = {
  readonly ANSWERS: 'fast' | 'checked'
  readonly BODY_LIMIT_KB: number
  readonly UPLOAD_LIMIT_MB: number
  readonly REQUESTS_PER_MINUTE: number
  readonly TRUST_PROXY: false | number | string[]
  readonly METRICS_TOKEN?: string | undefined
}

/** What the service stands on. */
export type Services = OperationContext & {
  readonly database: OpenDatabase
  readonly settings: HttpSettings
  readonly door: Door
  readonly logger?: FastifyBaseLogger
  readonly traces?: Traces | undefined
}
