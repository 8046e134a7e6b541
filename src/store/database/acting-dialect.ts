import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  PostgresAdapter,
  PostgresDriver,
  PostgresIntrospector,
  PostgresQueryCompiler,
} from 'kysely'
import type pg from 'pg'

/**
 * Opens each transaction with `opening` (which begins it and says who is asking) and does not wait for the
 * answer: on a pipelined connection it travels with the first statement of the work. Nothing can slip by
 * when it fails: the transaction has then begun and is aborted, so that every later statement fails too.
 */
class ActingDriver extends PostgresDriver {
  readonly #opening: string
  #opened: Promise<unknown> = Promise.resolve()

  constructor(pool: pg.Pool, opening: string) {
    super({ pool })
    this.#opening = opening
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    this.#opened = connection.executeQuery(CompiledQuery.raw(this.#opening))
    this.#opened.catch(() => {})
  }

  override async commitTransaction(connection: DatabaseConnection): Promise<void> {
    await this.#opened
    await super.commitTransaction(connection)
  }

  /** The reason why everything after it failed. */
  async openingFault(): Promise<unknown> {
    return this.#opened.then(
      () => undefined,
      (fault: unknown) => fault,
    )
  }
}

/** One transaction's dialect; the pool is shared. */
export class ActingDialect implements Dialect {
  readonly #driver: ActingDriver

  constructor(pool: pg.Pool, opening: string) {
    this.#driver = new ActingDriver(pool, opening)
  }

  createDriver = () => this.#driver
  createQueryCompiler = () => new PostgresQueryCompiler()
  createAdapter = () => new PostgresAdapter()
  createIntrospector: Dialect['createIntrospector'] = (db) => new PostgresIntrospector(db)
  openingFault = () => this.#driver.openingFault()
}
