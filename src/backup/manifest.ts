import { z } from 'zod'
import { head } from '../store/audit/head.ts'

/** Of the form of the file; a later form gets the next number. */
export const FORM = 1

const sha256 = z.string().regex(/^[0-9a-f]{64}$/)
const name = z.string().regex(/^[a-z_][a-z0-9_]*$/)

/** A table as it lies in a backup: COPY text of these columns, in the order of the primary key. */
export const tableShape = z.strictObject({ name, columns: z.array(name).min(1), key: z.array(name) })
export type TableShape = z.output<typeof tableShape>

/** The first entry: what is to come, and into which state of the tables it fits. */
export const opening = z.strictObject({
  form: z.literal(FORM),
  program: z.string(),
  server: z.string(),
  at: z.iso.datetime(),
  migrations: z.array(z.strictObject({ number: z.int(), name: z.string(), checksum: sha256 })).min(1),
  /** A table comes after those that it refers to. */
  tables: z.array(tableShape).min(1),
})
export type Opening = z.output<typeof opening>

/** The last entry: what there was, by count and hash. A file without it was cut short. */
export const manifest = z.strictObject({
  tables: z.record(name, z.strictObject({ rows: z.int(), sha256 })),
  jobs: z.int(),
  originals: z.strictObject({
    count: z.int(),
    bytes: z.int(),
    /** SHA-256 over their hashes in order, one a line. */
    sha256,
    /** On record and not in the folder. */
    missing: z.array(sha256),
    /** In the folder, with other bytes than their name says. */
    damaged: z.array(sha256),
  }),
  /** Where the audit chains ended. */
  heads: z.array(head),
  /** What was wrong with the audit, in words; left out by versions that did not look. */
  broken: z.array(z.string()).optional(),
})
export type Manifest = z.output<typeof manifest>
export type TableProof = Manifest['tables'][string]

export const OPENING = 'opening.json'
export const MANIFEST = 'manifest.json'
export const JOBS = 'jobs.ndjson'
