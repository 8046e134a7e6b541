/** A backup can't be made or restored as things are, in words; nothing was changed. */
export class BackupRefusal extends Error {
  override readonly name = 'BackupRefusal'
}
