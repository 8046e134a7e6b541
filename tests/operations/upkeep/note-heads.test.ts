import { createPrivateKey } from 'node:crypto'
import { appendFile, mkdtemp, readFile, rm } from 'node:fs/promises'
import http from 'node:http'
import os from 'node:os'
import path from 'node:path'
import { text } from 'node:stream/consumers'
import { sql } from 'kysely'
import { afterAll, expect, test } from 'vitest'
import { newKeyPem } from '../../../src/letters/signing/key-source.ts'
import { openSigner } from '../../../src/letters/signing/signer.ts'
import { noteHeads } from '../../../src/operations/upkeep/note-heads.ts'
import { readHeads } from '../../../src/store/audit/seal-heads.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'

const { services, app } = await testApp()
const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-notes-'))
afterAll(() => rm(folder, { recursive: true }))
const file = path.join(folder, 'heads.ndjson')
const key = createPrivateKey(newKeyPem())
const where = { file, url: undefined, key }

test('the ends of the chains are noted outside, sealed, and a tail that is cut off later is noticed', async () => {
  await newParcel(services)
  expect(await noteHeads(services, where)).toEqual([])
  await newParcel(services)
  expect(await noteHeads(services, where)).toEqual([])
  const lines = (await readFile(file, 'utf8')).trim().split('\n')
  expect(lines).toHaveLength(2)
  const { publicKey } = await openSigner(key)
  const last = await readHeads(lines[1]!, { keys: [{ ...publicKey }] })
  expect(last.ok && last.value.heads.map(({ county }) => county)).toEqual(['*', 'elsewhere', 'quillback'])
  // A disk that was full in the middle of a line.
  await appendFile(file, '{"at":"20')

  await administer(services.database, async (tx) => {
    await sql`alter table audit disable trigger user`.execute(tx)
    await sql`delete from audit where county = 'quillback' and number = (select max(number) from audit where county = 'quillback')`.execute(
      tx,
    )
    await sql`alter table audit enable trigger user`.execute(tx)
  })
  expect(await noteHeads(services, where)).toEqual([
    expect.stringMatching(/^entry \d+ of quillback was noted and is not there$/),
  ])
  // And it is not made good by another note.
  expect((await readFile(file, 'utf8')).trim().split('\n')).toHaveLength(3)
  const figures = (await app.inject('/metrics')).body
  expect(figures).toMatch(/asfound_audit_noting\{state="faults"\} 1/)
})

test('they are sent where they are to be kept, and who does not take them is told of', async () => {
  const taken: string[] = []
  let status = 204
  const server = http.createServer(async (request, response) => {
    taken.push(await text(request))
    response.writeHead(status).end()
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  afterAll(() => void server.close())
  const { port } = server.address() as { port: number }
  const outside = {
    resolve: async () => [{ address: '127.0.0.1', family: 4 }],
    isPublic: () => true,
    protocols: ['http:'],
  }
  const sent = { file: undefined, url: `http://notes.example:${port}/`, key: undefined, outside }
  expect(await noteHeads(services, sent)).toEqual([])
  expect(JSON.parse(taken[0]!).heads.length).toBe(3)
  status = 500
  await expect(noteHeads(services, sent)).rejects.toThrow(/it answered 500/)
})
