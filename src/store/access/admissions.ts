import { sql } from 'kysely'
import type { Tx } from '../database/database.ts'

export type OrganizationKind = 'county' | 'firm' | 'agent'

export type Organization = {
  readonly id: string
  readonly kind: OrganizationKind
  readonly name: string
  readonly secondStep: 'offered' | 'required'
}

export type Admission = {
  readonly county: string
  readonly organization: Organization
  readonly admittedAt: Date
  readonly withdrawnAt: Date | null
}

export const organizationById = (tx: Tx, id: string): Promise<Organization | undefined> =>
  tx
    .selectFrom('organization')
    .select(['id', 'kind', 'name', 'second_step as secondStep'])
    .where('id', '=', id)
    .executeTakeFirst()

const admissions = (tx: Tx) =>
  tx
    .selectFrom('admission as d')
    .innerJoin('organization as o', 'o.id', 'd.organization')
    .select([
      'd.county',
      'd.admitted_at as admittedAt',
      'd.withdrawn_at as withdrawnAt',
      'o.id',
      'o.kind',
      'o.name',
      'o.second_step as secondStep',
    ])

type Row = Organization & Omit<Admission, 'organization'>
const asAdmission = ({ county, admittedAt, withdrawnAt, ...organization }: Row): Admission => ({
  county,
  admittedAt,
  withdrawnAt,
  organization,
})

/** Who works in a county, or did, by name. */
export async function admissionsTo(tx: Tx, county: string): Promise<readonly Admission[]> {
  const rows = await admissions(tx).where('d.county', '=', county).orderBy('o.name').orderBy('o.id').execute()
  return rows.map(asAdmission)
}

/** Where an organization works, or did. */
export async function admissionsOf(tx: Tx, organization: string): Promise<readonly Admission[]> {
  const rows = await admissions(tx).where('d.organization', '=', organization).orderBy('d.county').execute()
  return rows.map(asAdmission)
}

export async function admissionHeld(
  tx: Tx,
  county: string,
  organization: string,
): Promise<Admission | undefined> {
  const row = await admissions(tx)
    .where('d.county', '=', county)
    .where('d.organization', '=', organization)
    .forUpdate('d')
    .executeTakeFirst()
  return row && asAdmission(row)
}

/** The kind of any organization, seen or not: whether a county may admit it is asked before it can be seen. At the door. */
export const kindOf = async (tx: Tx, organization: string): Promise<OrganizationKind | undefined> => {
  const row = await tx
    .selectFrom('organization')
    .select('kind')
    .where('id', '=', organization)
    .executeTakeFirst()
  return row?.kind
}

/** A firm or an agent's office, in the name of the county's administrator who takes it in. */
export async function insertOrganization(
  tx: Tx,
  { id, kind, name }: Pick<Organization, 'id' | 'kind' | 'name'>,
): Promise<void> {
  await tx.insertInto('organization').values({ id, kind, name }).execute()
}

/** Admits, or lets back in. */
export async function admit(
  tx: Tx,
  county: string,
  organization: string,
  by: string,
  at: Date,
): Promise<void> {
  const row = { admitted_by: by, admitted_at: at, withdrawn_at: null }
  await tx
    .insertInto('admission')
    .values({ county, organization, ...row })
    .onConflict((conflict) =>
      conflict
        .columns(['county', 'organization'])
        .doUpdateSet(row)
        .where(sql<boolean>`admission.withdrawn_at is not null`),
    )
    .execute()
}

export async function withdrawAdmission(
  tx: Tx,
  county: string,
  organization: string,
  at: Date,
): Promise<void> {
  await tx
    .updateTable('admission')
    .set({ withdrawn_at: at })
    .where('county', '=', county)
    .where('organization', '=', organization)
    .execute()
}
