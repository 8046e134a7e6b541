/**
 * The tables whose records the audit watches. A trigger on each writes the entries; this list tells when one is gone.
 * A new table is here, or among those that need not be, in tests/store/audit/watched.test.ts.
 */
export const WATCHED = [
  'access_event',
  'access_token',
  'account',
  'admission',
  'county',
  'decision',
  'document',
  'event',
  'findings',
  'findings_revision',
  'letter',
  'letter_withdrawal',
  'organization',
  'outside_identity',
  'permit',
  'permit_revision',
  'photo',
  'reconciliation',
  'second_step',
  'sign_in',
  'signing_key',
  'subscription',
  'taught_by',
  'taught_form',
  'transcription',
] as const
