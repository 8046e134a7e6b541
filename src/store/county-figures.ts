import { sql } from 'kysely'
import type { DiscrepancyKind, Severity } from '../reconcile/kinds.ts'
import type { StatusWord } from '../reconcile/status.ts'
import type { DecisionAction } from '../records/decision.ts'
import type { Tx } from './database/database.ts'

/** How the parcels of one decade stand; null gathers those without an approved permit. */
export type DecadeCount = {
  readonly decade: number | null
  readonly word: StatusWord | null
  readonly count: number
}
export type KindCount = {
  readonly kind: DiscrepancyKind
  readonly severity: Severity
  /** Nothing decided, or the ground of the decision has moved. */
  readonly open: number
  readonly decided: number
}
export type ActionCount = { readonly action: DecisionAction; readonly count: number }
/** Open ones by how long they have been. */
export type AgeCount = { readonly severity: Severity; readonly age: Age; readonly count: number }

export const AGES = ['under-30-days', '30-to-90-days', '90-days-to-a-year', 'over-a-year'] as const
export type Age = (typeof AGES)[number]

/** Parcels by the decade of their first approved permit and by their status as last derived (null: not yet). */
export async function parcelsByDecade(tx: Tx, county: string): Promise<readonly DecadeCount[]> {
  const first = tx
    .selectFrom('permit')
    .select((eb) => ['parcel', eb.fn.min('approved_on').as('day')])
    .where('county', '=', county)
    .where('approved_on', 'is not', null)
    .where('standing', 'is', null)
    .groupBy('parcel')
  const rows = await tx
    .selectFrom('parcel as p')
    .leftJoin(first.as('f'), 'f.parcel', 'p.id')
    .leftJoin('parcel_status as s', (join) =>
      join.onRef('s.county', '=', 'p.county').onRef('s.parcel', '=', 'p.id'),
    )
    .select((eb) => [
      sql<number | null>`(left(f.day, 3) || '0')::integer`.as('decade'),
      's.word',
      eb.fn.countAll<number>().as('count'),
    ])
    .where('p.county', '=', county)
    .where('p.retired_on', 'is', null)
    .groupBy(['decade', 's.word'])
    .orderBy('decade')
    .execute()
  return rows.map((row) => ({ ...row, word: row.word as StatusWord | null }))
}

export async function standingByKind(tx: Tx, county: string): Promise<readonly KindCount[]> {
  const rows = await tx
    .selectFrom('discrepancy')
    .select((eb) => [
      'kind',
      'severity',
      eb.fn.countAll<number>().filterWhere('state', 'in', ['open', 'ground-moved']).as('open'),
      eb.fn.countAll<number>().filterWhere('state', '=', 'decided').as('decided'),
    ])
    .where('county', '=', county)
    .where('state', '!=', 'vanished')
    .groupBy(['kind', 'severity', 'severity_rank'])
    .orderBy('severity_rank')
    .orderBy('kind')
    .execute()
  return rows.map((row) => ({ ...row, kind: row.kind as DiscrepancyKind }))
}

/** Decisions in force, by what was decided. */
export async function decisionsByAction(tx: Tx, county: string): Promise<readonly ActionCount[]> {
  const rows = await tx
    .selectFrom('decision as d')
    .select((eb) => ['d.action', eb.fn.countAll<number>().as('count')])
    .where('d.county', '=', county)
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom('decision as later')
            .select('later.id')
            .whereRef('later.county', '=', 'd.county')
            .whereRef('later.supersedes', '=', 'd.id'),
        ),
      ),
    )
    .groupBy('d.action')
    .execute()
  return rows.map((row) => ({ ...row, action: row.action as DecisionAction }))
}

const DAY_MS = 86_400_000

export async function openByAge(tx: Tx, county: string, now: Date): Promise<readonly AgeCount[]> {
  const before = (days: number) => new Date(now.getTime() - days * DAY_MS)
  const age = sql<Age>`case
    when raised_at > ${before(30)} then 'under-30-days'
    when raised_at > ${before(90)} then '30-to-90-days'
    when raised_at > ${before(365)} then '90-days-to-a-year'
    else 'over-a-year' end`
  return tx
    .selectFrom('discrepancy')
    .select((eb) => ['severity', age.as('age'), eb.fn.countAll<number>().as('count')])
    .where('county', '=', county)
    .where('state', 'in', ['open', 'ground-moved'])
    .groupBy(['severity', 'age'])
    .execute()
}
