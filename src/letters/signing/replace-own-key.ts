import type { KeyObject } from 'node:crypto'
import { rename } from 'node:fs/promises'
import path from 'node:path'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { OWN_KEY_FILE, signingKey } from './key-source.ts'

export type Replaced = {
  readonly key: KeyObject
  /** Where the old key lies now; null where there was none. */
  readonly oldFile: string | null
}

/** Puts a new key of the service's own in the place of the old one, which is set aside under `tag` and not destroyed. */
export async function replaceOwnKey(dataFolder: string, tag: string): Promise<Replaced> {
  const aside = path.join(dataFolder, OWN_KEY_FILE.replace(/\.pem$/, `.${tag}.pem`))
  const moved = await rename(path.join(dataFolder, OWN_KEY_FILE), aside).then(
    () => true,
    (cause: NodeJS.ErrnoException) => {
      if (cause.code === 'ENOENT') return false
      throw new OutsideFailure(`The old key can’t be set aside in ${dataFolder}`, { cause })
    },
  )
  const key = await signingKey({ pem: undefined, file: undefined, dataFolder })
  return { key, oldFile: moved ? aside : null }
}
