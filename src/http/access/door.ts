import type { FastifyInstance } from 'fastify'
import type { Provider } from '../../net/sign-in-provider.ts'
import type { Vault } from '../../store/access/vault.ts'
import type { AccessWatch } from '../../store/access/watch-access.ts'

/** What letting people in stands on, beside the database. */
export type Door = {
  /** Seals the secrets of one-time codes. */
  readonly vault: Vault
  /** The counties' own sign-ins. */
  readonly providers: ReadonlyMap<string, Provider>
  /** Hears of changes by other processes; without it nobody is remembered from one request to the next. */
  readonly watch?: AccessWatch
  /** Where people reach the service, for links; without it, wherever the request came to. */
  readonly publicAddress?: string | undefined
}

declare module 'fastify' {
  interface FastifyInstance {
    readonly door: Door
  }
}

export const standAtDoor = (app: FastifyInstance, door: Door): void => void app.decorate('door', door)
