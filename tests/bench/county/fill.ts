import { findingsEntry } from '../../../src/reading/entry/findings.ts'
import { permitEntry } from '../../../src/reading/entry/permit.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { insertSubmitted } from '../../../src/store/findings-at-once.ts'
import { listParcels } from '../../../src/store/parcels-at-once.ts'
import { insertPermits } from '../../../src/store/permits-at-once.ts'
import { COUNTY } from '../../support/people.ts'
import type { BenchService } from './bench-service.ts'
import { type CountyAsked, type MadeParcel, madeCounty } from './make-county.ts'

const AT_ONCE = 1000

/** Puts a made county into the database as imports would: parcels, and (unless left out) their papers and inspections. */
export async function fillCounty(
  {
    context,
    people,
  }: Pick<BenchService, 'people'> & { readonly context: Pick<BenchService['context'], 'database' | 'newId'> },
  asked: CountyAsked,
  only?: 'parcels',
): Promise<number> {
  let batch: MadeParcel[] = []
  let filled = 0
  for (const parcel of madeCounty(asked)) {
    batch.push(parcel)
    if (batch.length < AT_ONCE) continue
    await land(batch)
    filled += batch.length
    batch = []
  }
  if (batch.length > 0) await land(batch)
  return filled + batch.length

  async function land(parcels: readonly MadeParcel[]): Promise<void> {
    const made = { by: people.reviewer.account, at: new Date('2026-11-01T00:00:00Z') }
    const placed = parcels.map((parcel) => ({ ...parcel, id: context.newId() }))
    await transact(context.database, serviceIn(COUNTY), async (tx) => {
      await listParcels(
        tx,
        COUNTY,
        placed.map(({ id, number, address, oldNumbers }) => ({
          id,
          number,
          address,
          retiredOn: null,
          isNew: true,
          aliases: oldNumbers.map((old) => ({ number: old, kind: 'renumbered', changedOn: null })),
        })),
      )
      if (only === 'parcels') return
      await insertPermits(
        tx,
        COUNTY,
        placed.flatMap(({ id: parcel, permits }) =>
          permits.map((entry) => ({
            id: context.newId(),
            parcel,
            system: parcel,
            record: permitEntry.parse(entry),
            sources: { '': { kind: 'typed' as const, by: made.by, on: '2026-11-01' } },
          })),
        ),
        made,
      )
      const organization = people.firm.organization
      await insertSubmitted(
        tx,
        COUNTY,
        placed.flatMap(({ id: parcel, inspection }) =>
          inspection
            ? [
                {
                  id: context.newId(),
                  parcel,
                  system: parcel,
                  organization,
                  record: findingsEntry.parse(inspection),
                },
              ]
            : [],
        ),
        made,
      )
    })
  }
}
