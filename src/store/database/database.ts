import type { Readable } from 'node:stream'
import { CompiledQuery, Kysely, sql, type Transaction } from 'kysely'
import type pg from 'pg'
import { Impossible, invariant } from '../../base/invariant.ts'
import { spanned, type Traces } from '../../net/tracing/traces.ts'
import { ActingDialect } from './acting-dialect.ts'
import type { Actor } from './actor.ts'
import { type Askable, askOnce, callOf } from './ask-once.ts'
import { type CopyForm, copyOut } from './copy-out.ts'
import { isCollision, outsideIfGone } from './database-fault.ts'
import { noteStatements } from './note-statements.ts'
import { createPool } from './pool.ts'
import type { Tables } from './tables.ts'

/** An open transaction: query it with kysely. */
export type Tx = Transaction<Tables>

/** Who a transaction speaks for: an actor in a county, nobody yet, or the owner of the tables. */
type Asking = Actor | 'nobody' | 'owner'
type Work<T> = (tx: Tx, within: Database) => Promise<T>

/**
 * The database as operations see it: something to open transactions on, by `transact` and its two siblings
 * only. Within a transaction the work is given one that joins it, for the operations it calls.
 */
export type Database = {
  readonly perform: <T>(asking: Asking, work: Work<T>) => Promise<T>
  /** The same on connections that take cursors and COPY, for exports and imports. */
  readonly bulk: Database
  /**
   * The rows of a query as bytes, in the actor's name and as they are at this moment; `query` holds nothing that was
   * sent. No part of any transaction under way.
   */
  readonly copyOut: (actor: Actor, query: string, form: CopyForm) => Promise<Readable>
  /** Asks a function of the database that is made for it, in one round trip; it is told the county among its values. */
  readonly ask: <Row extends object>(what: Askable, values: readonly string[]) => Promise<readonly Row[]>
}

export type OpenDatabase = Database & {
  /** Throws OutsideFailure when the database does not answer. */
  readonly ping: () => Promise<void>
  /** Connections: those there may be, those there are, those of them that are idle; and transactions waiting for one. */
  readonly counts: () => {
    readonly most: number
    readonly total: number
    readonly idle: number
    readonly waiting: number
  }
  readonly close: () => Promise<void>
}

export type DatabaseOptions = {
  readonly url: string
  readonly maxConnections: number
  readonly onTrouble: (fault: Error) => void
  readonly traces?: Traces | undefined
}

/** Opens no connection yet; the first question does. */
export function openDatabase({ url, maxConnections, onTrouble, traces }: DatabaseOptions): OpenDatabase {
  const pool = createPool({ url, max: maxConnections, pipeline: true, onTrouble })
  let bulkPool: pg.Pool | undefined
  const bulkConnections = (): pg.Pool => {
    bulkPool ??= createPool({ url, max: 6, pipeline: false, onTrouble })
    return bulkPool
  }
  const copying: Database['copyOut'] = (actor, query, form) =>
    spanned(within(traces), 'copy', CLIENT, () => copyOut(bulkConnections(), settingsOf(actor), query, form))
  const asking: Database['ask'] = (what, values) =>
    spanned(within(traces), what, CLIENT, () => askOnce(pool, what, values))
  const bulk: Database = {
    copyOut: copying,
    ask: asking,
    perform: (asking, work) => performOn(bulkConnections(), traces, asking, work),
    get bulk() {
      return bulk
    },
  }
  return {
    perform: (asking, work) => performOn(pool, traces, asking, work),
    bulk,
    copyOut: copying,
    ask: asking,
    ping: async () => {
      await pool.query('select 1').catch((fault) => {
        throw outsideIfGone(fault)
      })
    },
    counts: () => ({
      most: maxConnections,
      total: pool.totalCount,
      idle: pool.idleCount,
      waiting: pool.waitingCount,
    }),
    close: async () => {
      await Promise.all([pool.end(), bulkPool?.end()])
    },
  }
}

/** How often a transaction that had to give way to another is run again. */
const ATTEMPTS = 4

/** What the service asks for nobody, every few seconds, is no trace. */
const within = (traces: Traces | undefined): Traces | undefined => (traces?.current() ? traces : undefined)

const CLIENT = { kind: 'client', told: { 'db.system.name': 'postgresql' } } as const

const performOn = <T>(pool: pg.Pool, traces: Traces | undefined, asking: Asking, work: Work<T>): Promise<T> =>
  spanned(within(traces), 'transaction', CLIENT, (span) =>
    transactOn(pool, noteStatements(traces, span), asking, work),
  )

async function transactOn<T>(
  pool: pg.Pool,
  noting: ReturnType<typeof noteStatements>,
  asking: Asking,
  work: Work<T>,
): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    const dialect = new ActingDialect(pool, `begin; ${settingsOf(asking)}`)
    const kysely = new Kysely<Tables>({ dialect, ...noting })
    try {
      return await kysely.transaction().execute((tx) => work(tx, joined(tx, asking)))
    } catch (fault) {
      const cause = (await dialect.openingFault()) ?? fault
      if (!isCollision(cause) || attempt === ATTEMPTS) throw outsideIfGone(cause)
    }
  }
}

/** Transactions opened inside a transaction are part of it: all or nothing, in the name of whoever the step is for. */
function joined(tx: Tx, outer: Asking): Database {
  const database: Database = {
    perform: async (asking, work) => {
      invariant(countyOf(asking) === countyOf(outer), 'a step left the county of its transaction')
      if (settingsOf(asking) === settingsOf(outer)) return work(tx, database)
      const say = (who: Asking) => sql.raw(settingsOf(who)).execute(tx)
      await say(asking)
      try {
        const result = await work(tx, joined(tx, asking))
        await say(outer)
        return result
      } catch (fault) {
        // The caller may catch this and go on: then again as itself. In an aborted transaction nothing goes on.
        await say(outer).catch(() => {})
        throw fault
      }
    },
    get bulk() {
      return database
    },
    ask: async <Row extends object>(what: Askable, values: readonly string[]) =>
      (await tx.executeQuery<Row>(CompiledQuery.raw(callOf(what, values), [...values]))).rows,
    copyOut: () => {
      throw new Impossible('rows are copied out of a transaction that is under way')
    },
  }
  return database
}

const countyOf = (asking: Asking): string => (typeof asking === 'string' ? asking : asking.county)

const NOBODY = { county: '', organization: '', account: '', role: '' }

/** Row-level security reads these; `true` makes each end with the transaction. No actor, no county: no row. */
function settingsOf(asking: Asking): string {
  if (asking === 'owner') return 'select 1'
  const { county, organization, account, role } = asking === 'nobody' ? NOBODY : asking
  const settings = {
    role: 'asfound_service',
    'asfound.county': county,
    'asfound.organization': organization ?? '',
    'asfound.account': account ?? '',
    'asfound.role': role,
    // A page is read in a millisecond; calling workers together for it takes ten.
    max_parallel_workers_per_gather: '0',
  }
  const calls = Object.entries(settings).map(
    ([name, value]) => `set_config('${name}', ${literal(value)}, true)`,
  )
  return `select ${calls.join(', ')}`
}

/** Only ids and role names come here; anything that could end a literal is a fault of this program. */
function literal(value: string): string {
  invariant(/^[\w.-]*$/.test(value), 'a county, organization, account or role with impossible characters')
  return `'${value}'`
}
