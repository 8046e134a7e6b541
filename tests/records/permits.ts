import type { z } from 'zod'
import { permitEntry } from '../../src/reading/entry/permit.ts'
import type { FiledPermit } from '../../src/records/permit.ts'

/** A filed permit from what a person would type. */
export function filed(id: string, entry: z.input<typeof permitEntry>, revision = 1): FiledPermit {
  return {
    id,
    revision,
    record: permitEntry.parse(entry),
    sources: { '': { kind: 'typed', by: 'records clerk', on: '2026-01-05' } },
  }
}
