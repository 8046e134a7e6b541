import { execFile } from 'node:child_process'
import { promisify } from 'node:util'

const run = promisify(execFile)
/** A network namespace of its own has no way out, not even to this machine (network_namespaces(7)). */
const PREFIX = ['unshare', '--user', '--map-root-user', '--net', '--'] as const

let found: Promise<readonly string[]> | undefined

/** What a program is started by so that it reaches no network; nothing where this machine allows no namespace. */
export const withoutNetwork = (): Promise<readonly string[]> => {
  found ??= run(PREFIX[0], [...PREFIX.slice(1), 'true'], { timeout: 5_000 }).then(
    () => PREFIX,
    () => [],
  )
  return found
}

/** Whether what reads strangers' files could reach the network here: said at the start. */
export const childrenReachNetwork = async (): Promise<boolean> => (await withoutNetwork()).length === 0
