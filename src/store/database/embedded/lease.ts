import { readFileSync, readlinkSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { OutsideFailure } from '../../../base/outside-failure.ts'
import type { ServerFolder } from './folder.ts'

const BEAT_MS = 2_000
/** A lease that has not been renewed for so long belongs to somebody who is gone. */
const STALE_MS = 5 * BEAT_MS
/** The file stays, so that the next start at the same place need not wait; only its time says that it is free. */
const GIVEN_BACK = new Date(0)

export type Lease = { readonly giveBack: () => void }

/**
 * Control names and process ids keep supervisors of one machine apart. Two containers, or two machines with a
 * shared folder, see neither; and two servers on one cluster destroy it. So whoever has the folder says from where, and
 * says it again every two seconds. Waits for a lease from elsewhere to go stale; throws when it is renewed.
 */
export async function takeLease(folder: ServerFolder, here: string = placeOfThisProcess()): Promise<Lease> {
  const file = path.join(folder.root, 'lease')
  const other = holderOf(file)
  if (other !== undefined && mayBeHeld(other, here) && (await isRenewed(file, other.renewed))) {
    throw inUse(other.place)
  }
  writeFileSync(file, here, { mode: 0o600 })
  // Somebody elsewhere may have come to the same conclusion at the same moment: the last to write has it.
  if (other?.place !== here) await wait(200)
  const now = holderOf(file)
  if (now?.place !== here) throw inUse(now?.place ?? 'elsewhere')
  const beat = setInterval(() => renew(file), BEAT_MS)
  return {
    giveBack: () => {
      clearInterval(beat)
      renew(file, GIVEN_BACK)
    },
  }
}

type Holder = { readonly place: string; readonly renewed: number }

const mayBeHeld = ({ place, renewed }: Holder, here: string): boolean =>
  place !== here && renewed !== GIVEN_BACK.getTime()

function holderOf(file: string): Holder | undefined {
  try {
    return { place: readFileSync(file, 'utf8'), renewed: statSync(file).mtimeMs }
  } catch {
    return undefined
  }
}

/** Watches the file rather than compare clocks, which two machines need not agree on. */
async function isRenewed(file: string, since: number): Promise<boolean> {
  for (let waited = 0; waited < STALE_MS; waited += 250) {
    await wait(250)
    const now = holderOf(file)
    if (now === undefined) return false
    if (now.renewed !== since) return true
  }
  return false
}

function renew(file: string, at: Date = new Date()): void {
  try {
    utimesSync(file, at, at)
  } catch {
    // The folder is gone or full; PostgreSQL will say so better.
  }
}

/** The machine, or the container: its name and the namespaces in which its processes and sockets are seen. */
function placeOfThisProcess(): string {
  if (process.platform !== 'linux') return os.hostname()
  return [os.hostname(), readlinkSync('/proc/self/ns/pid'), readlinkSync('/proc/self/ns/net')].join(' ')
}

const inUse = (place: string): OutsideFailure =>
  new OutsideFailure(
    `The data folder is in use from another container or machine (${place.split(' ')[0]}). Stop the service there, ` +
      'or give this one a data folder of its own (ASFOUND_DATA).',
  )
