import { createHash, randomBytes } from 'node:crypto'
import { linkSync, mkdirSync, readFileSync, realpathSync, rmSync, statSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'

/** Where the embedded PostgreSQL keeps what inside the data folder. */
export type ServerFolder = {
  readonly root: string
  /** PostgreSQL's own data directory. */
  readonly cluster: string
  /** Unix socket and nothing else. */
  readonly run: string
  readonly log: string
  /** Where the running server listens, as JSON; written by the supervisor when it is ready. */
  readonly address: string
  readonly password: string
  /** The process id of the supervisor. */
  readonly supervisor: string
  /** Held by the one supervisor of this folder while it lives; the control connections go there. */
  readonly control: string
}

export type ServerAddress = { readonly host: string; readonly port: number }

/** Makes the folder (private to its owner) and what identifies it; safe when several processes do so at once. */
export function openServerFolder(dataFolder: string): ServerFolder {
  const wanted = path.resolve(dataFolder, 'postgres')
  mkdirSync(wanted, { recursive: true, mode: 0o700 })
  const root = realpathSync(wanted)
  const folder = {
    root,
    cluster: path.join(root, 'cluster'),
    run: path.join(root, 'run'),
    log: path.join(root, 'server.log'),
    address: path.join(root, 'address.json'),
    password: path.join(root, 'password'),
    supervisor: path.join(root, 'supervisor.pid'),
  }
  const secret = createOnce(folder.password)
  // The inode tells a copy of the folder (its own server) from the folder under another name (the same server).
  const { dev, ino } = statSync(root)
  const id = createHash('sha256').update(`${secret} ${dev} ${ino}`).digest('hex').slice(0, 32)
  return { ...folder, control: controlName(id) }
}

export const databaseUrl = (folder: ServerFolder, database: string, user = 'postgres'): string => {
  const { host, port } = JSON.parse(readFileSync(folder.address, 'utf8')) as ServerAddress
  const password = readFileSync(folder.password, 'utf8')
  const place = host.startsWith('/')
    ? `localhost/${database}?host=${encodeURIComponent(host)}&port=${port}`
    : ''
  return `postgresql://${user}:${password}@${place || `${host}:${port}/${database}`}`
}

/** Abstract sockets and named pipes vanish with their process, so that holding one is also the lock on the folder. */
function controlName(id: string): string {
  if (process.platform === 'linux') return `\0asfound-${id}`
  if (process.platform === 'win32') return `\\\\.\\pipe\\asfound-${id}`
  return path.join(os.tmpdir(), `asfound-${id}.sock`)
}

/** The file's text; written once, whole, by whoever comes first. */
function createOnce(file: string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    const draft = `${file}.${process.pid}.${randomBytes(4).toString('hex')}`
    writeFileSync(draft, randomBytes(24).toString('hex'), { mode: 0o600, flush: true })
    try {
      linkSync(draft, file)
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw fault
    } finally {
      rmSync(draft)
    }
    return readFileSync(file, 'utf8')
  }
}
