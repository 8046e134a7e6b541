import type { LogEvent } from 'kysely'
import type { Span, Traces } from '../../net/tracing/traces.ts'

/** For kysely: a span below `above` for each statement, once it is over. Nothing where no traces are written. */
export function noteStatements(
  traces: Traces | undefined,
  above: Span | undefined,
): { readonly log?: (event: LogEvent) => void } {
  if (!traces || !above) return {}
  return {
    log: ({ level, query, queryDurationMillis }) => {
      const summary = summaryOf(query.sql)
      const told = { 'db.system.name': 'postgresql', 'db.query.summary': summary }
      traces
        .begin(summary, { kind: 'client', above, told, startedMsAgo: queryDurationMillis })
        .end({}, level === 'error')
    },
  }
}

/**
 * What a statement does to which table first, as `select parcel`. The text itself is not told: values are never in it,
 * but the one that says who is asking names an account.
 */
export function summaryOf(statement: string): string {
  const does = /^[\s(]*([a-z]+)/i.exec(statement)?.[1]?.toLowerCase() ?? 'statement'
  const table = /\b(?:from|into|update)\s+"?([a-z_]+)"?/i.exec(statement)?.[1]
  return table === undefined ? does : `${does} ${table}`
}
