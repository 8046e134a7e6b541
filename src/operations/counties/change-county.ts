import { err, ok, type Result } from '../../base/result.ts'
import { parcelFormatFrom } from '../../reading/parcel-number.ts'
import { changeCounty as change, countyById } from '../../store/counties.ts'
import type { Database } from '../../store/database/database.ts'
import { administer } from '../../store/database/transact.ts'

export type CountyAsked = {
  readonly county: string
  /** An example of each way of writing parcel numbers, the main one first; undefined leaves them as they are. */
  readonly parcelExamples?: readonly string[] | undefined
  readonly keepsNames?: boolean | undefined
}

/** How a county's papers are read: as the owner, from the command line. */
export async function changeCounty(
  database: Database,
  { county, parcelExamples, keepsNames }: CountyAsked,
): Promise<Result<null, string>> {
  const parcelFormat = parcelExamples && parcelFormatFrom(parcelExamples)
  if (parcelFormat === null)
    return err(
      'Write each example of a parcel number as groups of letters and figures: 07-0412-0031, R-114-22A.',
    )
  return administer(database, async (tx) => {
    if (!(await countyById(tx, county))) return err(`There is no county ${county}.`)
    await change(tx, county, {
      ...(parcelFormat ? { parcelFormat } : {}),
      ...(keepsNames === undefined ? {} : { keepsNames }),
    })
    return ok(null)
  })
}
