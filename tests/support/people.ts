import { addAccount, addCounty, addOrganization, issueToken } from '../../src/store/access/enrol.ts'
import type { Person, Role } from '../../src/store/database/actor.ts'
import type { Database } from '../../src/store/database/database.ts'
import { administer } from '../../src/store/database/transact.ts'

export type Enrolled = Person & { readonly token: string }

export type People = {
  readonly reviewer: Enrolled
  readonly firm: Enrolled
  /** Another firm in the same county. */
  readonly rival: Enrolled
  readonly agent: Enrolled
  /** A reviewer of another county, `elsewhere`. */
  readonly stranger: Enrolled
}

export const COUNTY = 'quillback'

/** Two counties and one account with a token for each part people play. */
export const enrolPeople = (database: Database): Promise<People> =>
  administer(database, async (tx) => {
    const format = { groups: [2, 4, 4], separator: '-', example: '07-0412-0031' }
    await addCounty(tx, { id: COUNTY, name: 'Quillback County', rulePack: COUNTY, parcelFormat: format })
    await addCounty(tx, { id: 'elsewhere', name: 'Elsewhere County', rulePack: COUNTY, parcelFormat: format })
    const enrol = async (role: Role, kind: 'county' | 'firm' | 'agent', name: string, county: string) => {
      const organization = await addOrganization(tx, { kind, name, counties: [county] })
      const account = await addAccount(tx, { organization, role, label: 'desk' })
      const token = await issueToken(tx, { account, name: 'tests', counties: [county] })
      return { account, organization, role, county, token }
    }
    return {
      reviewer: await enrol('reviewer', 'county', 'Health department', COUNTY),
      firm: await enrol('firm', 'firm', 'Heron Inspections', COUNTY),
      rival: await enrol('firm', 'firm', 'Larch Inspections', COUNTY),
      agent: await enrol('agent', 'agent', 'Mill Pond Realty', COUNTY),
      stranger: await enrol('reviewer', 'county', 'Elsewhere health department', 'elsewhere'),
    }
  })
