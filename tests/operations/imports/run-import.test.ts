import { Readable } from 'node:stream'
import { sql } from 'kysely'
import { expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { runImport } from '../../../src/operations/imports/run-import.ts'
import { startImport } from '../../../src/operations/imports/start-import.ts'
import { takeInFile } from '../../../src/operations/imports/take-in-file.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import { COUNTY } from '../../support/people.ts'
import { newParcel } from '../../support/quillback.ts'

const { services, people } = await testApp()
const parcel = await newParcel(services, '07-0412-0031')

const ROWS = 2500
const row = (n: number) => `${parcel.number},70-${String(n).padStart(5, '0')},new,1970-01-01`
const text = ['parcel,number,kind,issuedOn', ...Array.from({ length: ROWS }, (_, n) => row(n))].join('\n')

async function begun() {
  const kept = await services.files.keep(Readable.from([text]))
  const file = { kind: 'permits', format: 'csv', hash: kept.hash, bytes: kept.bytes, fileName: null } as const
  const taken = must(await takeInFile(services, people.reviewer, file))
  return must(await startImport(services, people.reviewer, taken.id, false)).id
}
const jobOf = (id: string, signal: AbortSignal, report: () => Promise<void> = async () => {}) =>
  ({ id, actor: people.reviewer, data: { import: id }, report, signal }) as const

const onFile = () =>
  transact(services.database, serviceIn(COUNTY), async (tx) => {
    const { rows } = await sql<{ permits: number; numbers: number; revisions: number }>`
      select count(*) as permits, count(distinct number) as numbers,
        (select count(*) from permit_revision) as revisions from permit`.execute(tx)
    return rows[0]!
  })

test('killed in the middle it goes on where it was: every row lands once', async () => {
  const id = await begun()
  const killed = new AbortController()
  const first = runImport(
    services,
    jobOf(id, killed.signal, async () => killed.abort()),
  )
  await expect(first).rejects.toThrow()
  const { permits: landed, ...alike } = await onFile()
  expect(landed).toBeGreaterThan(0)
  expect(landed).toBeLessThan(ROWS)
  expect(alike).toEqual({ numbers: landed, revisions: landed })
  const counts = await runImport(services, jobOf(id, new AbortController().signal))
  expect(counts).toMatchObject({
    state: 'done',
    rowsRead: ROWS,
    added: ROWS,
    rejected: 0,
    readToLine: ROWS + 1,
  })
  expect(await onFile()).toEqual({ permits: ROWS, numbers: ROWS, revisions: ROWS })
})

test('a job that comes a second time, or once too often, does nothing', async () => {
  const before = await onFile()
  const id = await begun()
  const both = await Promise.all(
    [1, 2].map(() => runImport(services, jobOf(id, new AbortController().signal))),
  )
  expect(both.map(({ state }) => state)).toContain('done')
  const again = await runImport(services, jobOf(id, new AbortController().signal))
  expect(again).toMatchObject({ added: 0, unchanged: ROWS })
  expect(await onFile()).toEqual(before)
})
