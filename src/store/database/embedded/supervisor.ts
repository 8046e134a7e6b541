/**
 * The process that keeps the embedded PostgreSQL of one data folder. Started by whichever service process
 * comes first, in a session of its own, so that the server outlives any one of them; ends, with the server,
 * when none is left. A service process holds on by a connection to the folder's control name: however it
 * dies, the kernel closes that.
 *
 * Run as: node supervisor.ts '<options as JSON>'
 */
import { rmSync, writeFileSync } from 'node:fs'
import net from 'node:net'
import { setTimeout as wait } from 'node:timers/promises'
import { findBinaries } from './binaries.ts'
import { ensureCluster } from './cluster.ts'
import { openServerFolder } from './folder.ts'
import { type Lease, takeLease } from './lease.ts'
import { lockFolder } from './lock-file.ts'
import { type Postmaster, startPostmaster, stopPostmaster } from './postmaster.ts'
import { chooseRunAs, giveTo } from './run-as.ts'

export type SupervisorOptions = {
  readonly dataFolder: string
  readonly settings: readonly string[]
  /** How long the server stays up for the next process after the last one left. */
  readonly lingerMs: number
}

/** What the control connection says, one word a line; `failed` is followed by the reason. */
export type SupervisorWord = 'ready' | 'closing' | `failed ${string}`

const options = JSON.parse(process.argv[2] ?? '{}') as SupervisorOptions
const folder = openServerFolder(options.dataFolder)
const holders = new Set<net.Socket>()
let word: SupervisorWord | undefined
let postmaster: Postmaster | undefined
let lease: Lease | undefined
let lingering: NodeJS.Timeout | undefined

const control = net.createServer((socket) => {
  holders.add(socket)
  clearTimeout(lingering)
  if (word) socket.write(`${word}\n`)
  socket.on('error', () => {})
  socket.on('close', () => {
    holders.delete(socket)
    lingerThenStop()
  })
  socket.resume()
})

control.once('error', (fault: NodeJS.ErrnoException) => {
  // Another supervisor holds the folder: the one that started this process will find it.
  process.exit(fault.code === 'EADDRINUSE' ? 0 : 1)
})
if (process.platform === 'darwin') lockFolder(folder)
control.listen(folder.control, () => {
  // For people who look; nothing reads it.
  writeFileSync(folder.supervisor, `${process.pid}\n`, { mode: 0o600 })
  void keep()
})
process.on('SIGTERM', () => void stop())
process.on('SIGINT', () => void stop())

async function keep(): Promise<void> {
  try {
    const binaries = await findBinaries()
    lease = await takeLease(folder)
    const way = await chooseRunAs(binaries.postgres, folder.root)
    await ensureCluster(folder, binaries, way)
    await giveTo(way, folder.cluster)
    for (let failures = 0; failures < 5 && word !== 'closing'; failures++) {
      const started = Date.now()
      postmaster = await startPostmaster(folder, binaries, way, options.settings)
      tell('ready')
      lingerThenStop()
      await postmaster.ended
      if (Date.now() - started > 60_000) failures = 0
    }
    if (word !== 'closing') throw new Error('PostgreSQL ended five times in a row')
  } catch (fault) {
    tell(`failed ${String((fault as Error).message).replaceAll('\n', ' ')}`)
    console.error(fault)
    await wait(1_000)
    lease?.giveBack()
    process.exit(1)
  }
}

function tell(next: SupervisorWord): void {
  word = next
  for (const socket of holders) socket.write(`${next}\n`)
}

function lingerThenStop(): void {
  clearTimeout(lingering)
  if (word === 'ready' && holders.size === 0) lingering = setTimeout(() => void stop(), options.lingerMs)
}

/** The control name is kept until the server has ended: nobody may start another one on the folder before. */
async function stop(): Promise<void> {
  if (word === 'closing') return
  tell('closing')
  if (postmaster) await stopPostmaster(postmaster)
  rmSync(folder.address, { force: true })
  lease?.giveBack()
  process.exit(0)
}
