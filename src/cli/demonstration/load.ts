import { addDays, dayOf, daysBetween, type PlainDate, plainDate } from '../../base/plain-date.ts'
import { must } from '../../base/result.ts'
import type { OperationContext } from '../../operations/context.ts'
import { addParcel } from '../../operations/parcels/add-parcel.ts'
import { reconcileParcel } from '../../operations/reconciliation/reconcile-parcel.ts'
import { serviceIn } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { parcelsAfter } from '../../store/parcels.ts'
import { type Cast, COUNTY, holdDemonstration } from './enrol.ts'
import { happenings } from './happenings.ts'
import { moved } from './moved.ts'
import { saySystem } from './say-system.ts'
import { DEMONSTRATION_DAY, type ParcelFile, type Story } from './story.ts'

const reaches = ({ system }: ParcelFile): boolean => (system?.parcels.length ?? 0) > 0

/** When the county's old papers were typed in: before anything that the stories tell of the present. */
const TYPED_IN: PlainDate = must(plainDate('2025-01-15'))

/**
 * Lives the stories through in the service, by the same operations that people use: every paper, inspection and decision in
 * the order of its day, on that day's clock, so that what appeared, changed and vanished is all there. Once: a county
 * that has parcels is left alone. All or nothing. Returns how many parcels were loaded.
 */
export const loadStories = (
  context: OperationContext,
  cast: Cast,
  stories: readonly Story[],
): Promise<number> =>
  transact(context.database, serviceIn(COUNTY.id), async (tx, within) => {
    await holdDemonstration(tx)
    if ((await parcelsAfter(tx, COUNTY.id, undefined, 1)).length > 0) return 0
    const now = context.clock()
    const days = daysBetween(DEMONSTRATION_DAY, dayOf(now))
    const on = (day: PlainDate): OperationContext => {
      const noon = new Date(`${day}T12:00:00Z`)
      return { ...context, database: within, clock: () => (noon < now ? noon : now) }
    }
    const typedIn = addDays(TYPED_IN, days)
    const files = stories.flatMap(({ slug, parcels }) =>
      parcels.map((file) => ({ slug, file: moved(file, days) })),
    )
    const ids = new Map<string, string>()
    for (const { file } of files) {
      const { number, address, oldNumbers } = file.parcel
      if (ids.has(number)) continue
      const aliases = oldNumbers.map((old) => ({ ...old, note: null }))
      const added = await addParcel(on(typedIn), serviceIn(COUNTY.id), {
        number,
        address,
        retiredOn: null,
        oldNumbers: aliases,
      })
      ids.set(number, must(added).id)
    }
    const systems = new Map<ParcelFile, string>()
    const saying = files.filter(({ file }) => file.system)
    // One that a parcel has not is said last: by then another serves it.
    for (const { slug, file } of saying.toSorted(
      (a, b) => Number(!reaches(a.file)) - Number(!reaches(b.file)),
    )) {
      const own = [...systems.keys()].some(({ parcel }) => parcel.number === file.parcel.number)
        ? undefined
        : ids.get(file.parcel.number)!
      const said = await saySystem(on(typedIn), cast, file, own)
      if (!said.ok) throw new Error(`${slug}: its system was refused: ${JSON.stringify(said.error)}`)
      systems.set(file, said.value.system.id)
    }
    const all = files.flatMap(({ slug, file }) =>
      happenings(file, typedIn, () => systems.get(file)).map((happening) => ({ ...happening, slug })),
    )
    for (const { day, slug, what, happen } of all.toSorted((a, b) =>
      a.day < b.day ? -1 : a.day > b.day ? 1 : 0,
    )) {
      const answer = await happen(on(day), cast)
      if (!answer.ok) throw new Error(`${slug}: ${what} was refused: ${JSON.stringify(answer.error)}`)
    }
    // Time has passed since the last of it: an inspection may have run out of its window.
    for (const { file } of files)
      if (file.permits.length + file.findings.length > 0)
        await reconcileParcel(
          { ...context, database: within },
          serviceIn(COUNTY.id),
          ids.get(file.parcel.number)!,
          'time-passed',
        )
    return files.length
  })
