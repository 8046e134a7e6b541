import { err, ok } from '../base/result.ts'
import type { Tx } from '../store/database/database.ts'
import { spendQuota, standingQuota } from '../store/quotas.ts'
import type { Answer, Refusal } from './refusal.ts'

/** What one organization may have or use, so that none takes the room of all. */
export type Quotas = {
  /** Open at once. */
  readonly drafts: number
  readonly subscriptions: number
  readonly tokens: number
  /** A day, by UTC. */
  readonly photos: number
  readonly papers: number
  readonly imports: number
  /** Of papers and files to import, a day. */
  readonly uploadMb: number
}

/** More than the largest county of any state would meet; common practice is far below. */
export const USUAL_QUOTAS: Quotas = {
  drafts: 2_000,
  subscriptions: 2_000,
  tokens: 500,
  photos: 10_000,
  papers: 20_000,
  imports: 500,
  uploadMb: 200_000,
}

const SAYS: { readonly [Q in keyof Quotas]: (most: number) => string } = {
  drafts: (most) => `Your organization has ${most} open drafts, the most it may have. Submit some first.`,
  subscriptions: (most) =>
    `Your organization has ${most} subscriptions, the most it may have. End some first.`,
  tokens: (most) => `Your organization has ${most} tokens, the most it may have. Revoke some first.`,
  photos: (most) =>
    `Your organization has sent ${most} photos today, the most for one day. Send the rest tomorrow.`,
  papers: (most) =>
    `Your organization has uploaded ${most} documents today, the most for one day. Upload the rest tomorrow.`,
  imports: (most) =>
    `Your organization has sent ${most} import files today, the most for one day. Send the rest tomorrow.`,
  uploadMb: (most) =>
    `Your organization may send ${most} MB a day, and this would go over. Send it tomorrow.`,
}

/** How often each was met, in this process; for the metrics. */
const met = new Map<keyof Quotas, number>()
export const quotasMet = (): ReadonlyMap<keyof Quotas, number> => met

const HOUR_SECONDS = 3_600

function reached(what: keyof Quotas, most: number) {
  met.set(what, (met.get(what) ?? 0) + 1)
  return err<Refusal>({ why: 'quota', says: SAYS[what](most), retryAfterSeconds: HOUR_SECONDS })
}

type With = { readonly quotas?: Quotas }

/** Whether the asker's organization may have one more; in the asker's transaction. */
export async function mayHaveAnother(
  tx: Tx,
  { quotas = USUAL_QUOTAS }: With,
  what: 'drafts' | 'subscriptions' | 'tokens',
): Promise<Answer<void>> {
  return (await standingQuota(tx, what)) < quotas[what] ? ok(undefined) : reached(what, quotas[what])
}

/** Whether it may use so much more today, which is counted. */
export async function mayUse(
  tx: Tx,
  { quotas = USUAL_QUOTAS }: With,
  what: 'photos' | 'papers' | 'imports',
  bytes: number,
): Promise<Answer<void>> {
  if (!(await spendQuota(tx, what, 1, quotas[what]))) return reached(what, quotas[what])
  if (what === 'photos') return ok(undefined)
  const most = quotas.uploadMb * 1_048_576
  if (await spendQuota(tx, 'uploadBytes', bytes, most)) return ok(undefined)
  // It was not taken, and counts as nothing.
  await spendQuota(tx, what, -1, quotas[what])
  return reached('uploadMb', quotas.uploadMb)
}
