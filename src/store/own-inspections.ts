import type { PlainDate } from '../base/plain-date.ts'
import type { StatusWord } from '../reconcile/status.ts'
import type { Tx } from './database/database.ts'
import type { Findings } from './findings.ts'

/** An inspection as a firm's list tells it. */
export type OwnInspection = Pick<
  Findings,
  'id' | 'parcel' | 'system' | 'state' | 'amends' | 'changedAt' | 'submittedAt' | 'revision'
> & {
  readonly inspectedOn: PlainDate
  readonly parcelNumber: string
  readonly parcelAddress: string | null
  /** As last derived; null where it was not yet. */
  readonly word: StatusWord | null
  /** Findings submitted later have taken the place of these. */
  readonly amended: boolean
}

/** A firm's inspections: those not submitted first, then the newest. The asker's own are all it can see. */
export async function ownInspections(
  tx: Tx,
  county: string,
  organization: string,
  most: number,
): Promise<readonly OwnInspection[]> {
  const rows = await tx
    .selectFrom('findings as f')
    .innerJoin('parcel as p', (join) =>
      join.onRef('p.county', '=', 'f.county').onRef('p.id', '=', 'f.parcel'),
    )
    .leftJoin('parcel_status as s', (join) =>
      join.onRef('s.county', '=', 'f.county').onRef('s.parcel', '=', 'f.parcel'),
    )
    .select((eb) => [
      'f.id',
      'f.parcel',
      'f.system',
      'f.state',
      'f.amends',
      'f.changed_at as changedAt',
      'f.submitted_at as submittedAt',
      'f.revision',
      'f.inspected_on as inspectedOn',
      'p.number as parcelNumber',
      'p.address as parcelAddress',
      's.word',
      eb
        .exists(
          eb
            .selectFrom('findings as later')
            .select('later.id')
            .whereRef('later.county', '=', 'f.county')
            .whereRef('later.amends', '=', 'f.id')
            .where('later.state', '=', 'submitted'),
        )
        .as('amended'),
    ])
    .where('f.county', '=', county)
    .where('f.organization', '=', organization)
    .orderBy('f.state')
    .orderBy('f.inspected_on', 'desc')
    .orderBy('f.id', 'desc')
    .limit(most)
    .execute()
  return rows.map((row) => ({
    ...row,
    inspectedOn: row.inspectedOn as PlainDate,
    word: row.word as StatusWord | null,
    amended: Boolean(row.amended),
  }))
}
