import { constants, openSync, rmSync } from 'node:fs'
import path from 'node:path'
import type { ServerFolder } from './folder.ts'

/** BSD's flag to lock a file while opening it; Node passes it on and has no name for it. */
const O_EXLOCK = 0x20

/**
 * Where control names are files (macOS), a name left by a killed supervisor must be told from a live one.
 * The lock vanishes with its process; whoever gets it may clear the name away. Exits quietly when it is taken.
 */
export function lockFolder(folder: ServerFolder): void {
  try {
    const flags = constants.O_RDWR | constants.O_CREAT | constants.O_NONBLOCK | O_EXLOCK
    openSync(path.join(folder.root, 'lock'), flags, 0o600)
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'EAGAIN') process.exit(0)
    throw fault
  }
  rmSync(folder.control, { force: true })
}
