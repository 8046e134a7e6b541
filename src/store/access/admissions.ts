import { sql } from 'kysely'
import type { Tx } from '../database/database.ts'

export type OrganisationKind = 'county' | 'firm' | 'agent'

export type Organisation = {
  readonly id: string
  readonly kind: OrganisationKind
  readonly name: string
  readonly secondStep: 'offered' | 'required'
}

export type Admission = {
  readonly county: string
  readonly organisation: Organisation
  readonly admittedAt: Date
  readonly withdrawnAt: Date | null
}

export const organisationById = (tx: Tx, id: string): Promise<Organisation | undefined> =>
  tx
    .selectFrom('organisation')
    .select(['id', 'kind', 'name', 'second_step as secondStep'])
    .where('id', '=', id)
    .executeTakeFirst()

const admissions = (tx: Tx) =>
  tx
    .selectFrom('admission as d')
    .innerJoin('organisation as o', 'o.id', 'd.organisation')
    .select([
      'd.county',
      'd.admitted_at as admittedAt',
      'd.withdrawn_at as withdrawnAt',
      'o.id',
      'o.kind',
      'o.name',
      'o.second_step as secondStep',
    ])

type Row = Organisation & Omit<Admission, 'organisation'>
const asAdmission = ({ county, admittedAt, withdrawnAt, ...organisation }: Row): Admission => ({
  county,
  admittedAt,
  withdrawnAt,
  organisation,
})

/** Who works in a county, or did, by name. */
export async function admissionsTo(tx: Tx, county: string): Promise<readonly Admission[]> {
  const rows = await admissions(tx).where('d.county', '=', county).orderBy('o.name').orderBy('o.id').execute()
  return rows.map(asAdmission)
}

/** Where an organisation works, or did. */
export async function admissionsOf(tx: Tx, organisation: string): Promise<readonly Admission[]> {
  const rows = await admissions(tx).where('d.organisation', '=', organisation).orderBy('d.county').execute()
  return rows.map(asAdmission)
}

export async function admissionHeld(
  tx: Tx,
  county: string,
  organisation: string,
): Promise<Admission | undefined> {
  const row = await admissions(tx)
    .where('d.county', '=', county)
    .where('d.organisation', '=', organisation)
    .forUpdate('d')
    .executeTakeFirst()
  return row && asAdmission(row)
}

/** The kind of any organisation, seen or not: whether a county may admit it is asked before it can be seen. At the door. */
export const kindOf = async (tx: Tx, organisation: string): Promise<OrganisationKind | undefined> => {
  const row = await tx
    .selectFrom('organisation')
    .select('kind')
    .where('id', '=', organisation)
    .executeTakeFirst()
  return row?.kind
}

/** A firm or an agent's office, in the name of the county's administrator who takes it in. */
export async function insertOrganisation(
  tx: Tx,
  { id, kind, name }: Pick<Organisation, 'id' | 'kind' | 'name'>,
): Promise<void> {
  await tx.insertInto('organisation').values({ id, kind, name }).execute()
}

/** Admits, or lets back in. */
export async function admit(
  tx: Tx,
  county: string,
  organisation: string,
  by: string,
  at: Date,
): Promise<void> {
  const row = { admitted_by: by, admitted_at: at, withdrawn_at: null }
  await tx
    .insertInto('admission')
    .values({ county, organisation, ...row })
    .onConflict((conflict) =>
      conflict
        .columns(['county', 'organisation'])
        .doUpdateSet(row)
        .where(sql<boolean>`admission.withdrawn_at is not null`),
    )
    .execute()
}

export async function withdrawAdmission(
  tx: Tx,
  county: string,
  organisation: string,
  at: Date,
): Promise<void> {
  await tx
    .updateTable('admission')
    .set({ withdrawn_at: at })
    .where('county', '=', county)
    .where('organisation', '=', organisation)
    .execute()
}
