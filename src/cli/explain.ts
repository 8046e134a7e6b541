import { BackupRefusal } from '../backup/backup-refusal.ts'
import { OutsideFailure } from '../base/outside-failure.ts'
import { MigrationRefusal } from '../store/database/migrate.ts'

/** Tells a person why a program could not do its work: in a sentence where we have one, in full where we have none. */
export function explain(fault: unknown): void {
  const known =
    fault instanceof OutsideFailure || fault instanceof MigrationRefusal || fault instanceof BackupRefusal
  const { message, cause, code } = fault as Error & { readonly code?: string }
  if (code === 'EADDRINUSE' || code === 'EACCES')
    console.error(`${message}. Set PORT (and HOST) to a free address.`)
  else if (!known) console.error(fault)
  else if (cause instanceof Error)
    console.error(`${message} (${cause.message || String((cause as { code?: string }).code)})`)
  else console.error(message)
}
