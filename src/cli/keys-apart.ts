import { existsSync } from 'node:fs'
import path from 'node:path'
import type { Settings } from '../config.ts'
import { OWN_KEY_FILE as SIGNING_KEY_FILE } from '../letters/signing/key-source.ts'
import { OWN_KEY_FILE as ACCESS_KEY_FILE } from '../store/access/vault.ts'

/** A key that no backup holds: whoever has the backup alone can neither seal letters nor open what it keeps sealed. */
export type KeyApart = {
  /** Where this installation has it: the setting, or the file. */
  readonly from: string
  readonly needed: string
  readonly there: boolean
}

/** Both keys, where they are here, and what can't be done without them. */
export function keysApart(settings: Settings): readonly KeyApart[] {
  const key = (setting: 'ASFOUND_ACCESS_KEY' | 'ASFOUND_SIGNING_KEY', own: string, needed: string) => {
    const file = settings[`${setting}_FILE`] ?? path.join(settings.ASFOUND_DATA, own)
    return settings[setting] === undefined
      ? { from: file, needed, there: existsSync(file) }
      : { from: `the setting ${setting}`, needed, there: true }
  }
  return [
    key('ASFOUND_ACCESS_KEY', ACCESS_KEY_FILE, 'decrypts two-step sign-in and webhook secrets'),
    key('ASFOUND_SIGNING_KEY', SIGNING_KEY_FILE, 'signs letters and audit checkpoints'),
  ]
}
