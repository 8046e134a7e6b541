/**
 * A service whose data folder is a disk of its own (a tmpfs, in a mount namespace of this process), which is filled to
 * the last byte and emptied again. Prints what it saw as one line of JSON. Exit 77: no such disk can be made here.
 *
 * Run as: unshare --mount node full-disk-driver.ts <mount point>
 */
import { execFileSync } from 'node:child_process'
import { closeSync, openSync, rmSync, writeSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import pino from 'pino'
import { readSettings } from '../../src/config.ts'
import { startService } from '../../src/service.ts'
import { verifyAudit } from '../../src/store/audit/verify-audit.ts'
import { databaseUrl, openServerFolder } from '../../src/store/database/embedded/folder.ts'
import { enrolPeople } from '../support/people.ts'
import { newParcel, permit1974 } from '../support/quillback.ts'

const disk = process.argv[2] ?? ''
try {
  execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=256m,mode=0755', 'tmpfs', disk], { stdio: 'ignore' })
} catch {
  process.exit(77)
}
const read = readSettings({ ASFOUND_DATA: disk, PORT: '0', REQUESTS_PER_MINUTE: '100000' })
if (!read.ok) throw new Error(read.error.join())
const service = await startService(read.value, pino({ level: 'silent' }))
const people = await enrolPeople(service.services.database)
const parcels = await Promise.all(Array.from({ length: 40 }, () => newParcel(service.services)))
const headers = { authorization: `Bearer ${people.reviewer.token}` }

type Seen = { readonly status: number; readonly retryAfter: number }
const seen = async (asking: Promise<Response>): Promise<Seen> => {
  // 0: no answer at all.
  const answer = await asking.catch((fault: Error) => {
    process.stderr.write(`${fault.message}: ${String(fault.cause)}\n`)
    return undefined
  })
  if (!answer) return { status: 0, retryAfter: 0 }
  await answer.arrayBuffer()
  return { status: answer.status, retryAfter: Number(answer.headers.get('retry-after') ?? 0) }
}
const get = (url: string) => seen(fetch(`${service.address}${url}`, { headers }))
const enter = (at: number) =>
  seen(
    fetch(`${service.address}/v1/counties/quillback/parcels/${parcels[at]!.number}/permits`, {
      method: 'POST',
      headers: { ...headers, 'content-type': 'application/json', 'idempotency-key': `disk-${at}` },
      // Enough of it that the free rest of a page of the log does not hold it.
      body: JSON.stringify({ ...permit1974, number: `D-${at}`, remarks: 'wet ground '.repeat(800) }),
    }),
  )
const upload = (bytes: number) => {
  const form = new FormData()
  form.set(
    'file',
    new Blob([`%PDF-1.4\n${'x'.repeat(bytes)}\n%%EOF`], { type: 'application/pdf' }),
    'paper.pdf',
  )
  return seen(
    fetch(`${service.address}/v1/counties/quillback/documents`, { method: 'POST', headers, body: form }),
  )
}

const before = await Promise.all([0, 1, 2].map(enter))
const ballast = path.join(disk, 'ballast')
fill(ballast)
const during: Seen[] = []
const written: Seen[] = []
for (let at = 3; at < parcels.length; at++) {
  written[at] = await enter(at)
  if (at % 6 === 0) during.push(await upload(3_000_000))
}
const ready = await get('/health/ready')
const live = await get('/health/live')
const drafts = await readdir(path.join(disk, 'originals/drafts'))
await wait(3_000)

rmSync(ballast)
const from = Date.now()
while (Date.now() - from < 90_000 && (await get('/health/ready')).status !== 200) await wait(200)
const recoveredMs = Date.now() - from
const again = await Promise.all(written.map((it, at) => (it.status === 201 ? it : enter(at))).filter(Boolean))
const paper = await upload(1_000)

const client = new pg.Client({ connectionString: databaseUrl(openServerFolder(disk), 'asfound') })
await client.connect()
const { rows } = await client.query<{ number: string; n: number }>(
  `select number, count(*)::int as n from permit where number like 'D-%' group by number`,
)
const { faults } = await verifyAudit(client)
await client.end()
await service.stop()
process.stdout.write(
  `${JSON.stringify({ before, written, during, ready, live, drafts, recoveredMs, again, paper, rows, faults })}\n`,
)
process.exit(0)

/** To the last byte: PostgreSQL finds no page more, and no file a block. */
function fill(file: string): void {
  const handle = openSync(file, 'w')
  for (const size of [1_048_576, 65_536, 4_096, 512]) {
    const block = Buffer.alloc(size)
    try {
      for (;;) writeSync(handle, block)
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code !== 'ENOSPC') throw fault
    }
  }
  closeSync(handle)
}
