import { z } from 'zod'

/** Where a chain ends, or ended: the number and hash of its last entry. */
export const head = z.strictObject({
  county: z.string().min(1),
  number: z.int().min(0),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
})

export type Head = z.output<typeof head>

/** What is kept outside the database: later it tells whether the chains were written anew. */
export const notedHeads = z.strictObject({ at: z.iso.datetime(), heads: z.array(head) })

export type NotedHeads = z.output<typeof notedHeads>
