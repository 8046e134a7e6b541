import { readFileSync } from 'node:fs'
import net from 'node:net'
import path from 'node:path'
import { z } from 'zod'
import { err, ok, type Result } from './base/result.ts'
import { type Quotas, USUAL_QUOTAS } from './operations/quotas.ts'

const whole = (least: number, most: number) =>
  z
    .string()
    .regex(/^\d+$/, 'is not a whole number')
    .transform(Number)
    .refine((value) => value >= least && value <= most, `must be from ${least} to ${most}`)

const choice = <const T extends readonly [string, ...string[]]>(...words: T) =>
  z.enum(words, `must be one of: ${words.join(', ')}`)

const onOff = choice('on', 'off').transform((word) => word === 'on')

const HOPS = /^[1-9]$/
const NETWORK = /^[0-9a-f.:]+(?:\/\d{1,3})?$/i
const isNetwork = (text: string): boolean => {
  const [address = '', bits] = text.split('/')
  const family = net.isIP(address)
  return NETWORK.test(text) && family !== 0 && Number(bits ?? 0) <= (family === 4 ? 32 : 128)
}

/** Whose word about where a request came from is taken: nobody's, that of so many proxies in a row, or of these. */
const trusted = z
  .string()
  .transform((text) => text.trim())
  .refine((text) => text === 'off' || HOPS.test(text) || text.split(/\s*,\s*/).every(isNetwork), {
    message:
      'must be off, the number of proxies one after the other (1 to 9), or their addresses and networks with commas between, as 10.0.0.7, 10.1.0.0/16',
  })
  .transform((text) => (text === 'off' ? false : HOPS.test(text) ? Number(text) : text.split(/\s*,\s*/)))

/** Every setting, its default as one would write it, and its check. docs/settings.md says what each is for. */
export const SETTINGS = {
  HOST: z.string().min(1).default('127.0.0.1'),
  PORT: whole(0, 65_535).prefault('8080'),
  DATABASE_URL: z
    .string()
    .regex(/^postgres(ql)?:\/\//, 'must begin with postgresql://')
    .refine((text) => URL.canParse(text), 'is not a valid address')
    .optional(),
  DATABASE_URL_FILE: z.string().min(1).optional(),
  DATABASE_CONNECTIONS: whole(2, 500).prefault('10'),
  ASFOUND_DATA: z
    .string()
    .min(1)
    .transform((folder) => path.resolve(folder))
    .prefault('.data'),
  LOG_LEVEL: choice('fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent').default('info'),
  MIGRATE: onOff.prefault('on'),
  JOBS: onOff.prefault('on'),
  JOBS_AT_ONCE: whole(1, 64).prefault('2'),
  ANSWERS: choice('fast', 'checked').default('fast'),
  BODY_LIMIT_KB: whole(16, 4_096).prefault('1024'),
  UPLOAD_LIMIT_MB: whole(1, 2_000).prefault('500'),
  REQUESTS_PER_MINUTE: whole(1, 1_000_000).prefault('1200'),
  QUOTA_DRAFTS: whole(1, 1_000_000).prefault(String(USUAL_QUOTAS.drafts)),
  QUOTA_SUBSCRIPTIONS: whole(1, 1_000_000).prefault(String(USUAL_QUOTAS.subscriptions)),
  QUOTA_TOKENS: whole(1, 1_000_000).prefault(String(USUAL_QUOTAS.tokens)),
  QUOTA_PHOTOS_A_DAY: whole(1, 10_000_000).prefault(String(USUAL_QUOTAS.photos)),
  QUOTA_PAPERS_A_DAY: whole(1, 10_000_000).prefault(String(USUAL_QUOTAS.papers)),
  QUOTA_IMPORTS_A_DAY: whole(1, 1_000_000).prefault(String(USUAL_QUOTAS.imports)),
  QUOTA_UPLOAD_MB_A_DAY: whole(1, 100_000_000).prefault(String(USUAL_QUOTAS.uploadMb)),
  TRUST_PROXY: trusted.prefault('off'),
  METRICS_TOKEN: z.string().min(16, 'must have at least 16 characters').optional(),
  METRICS_TOKEN_FILE: z.string().min(1).optional(),
  PUBLIC_ADDRESS: z
    .string()
    .regex(/^https?:\/\//, 'must begin with https:// or http://')
    .refine((text) => URL.canParse(text), 'is not a valid address')
    .optional(),
  ASFOUND_SIGNING_KEY: z.string().min(1).optional(),
  ASFOUND_SIGNING_KEY_FILE: z.string().min(1).optional(),
  ASFOUND_ACCESS_KEY: z.string().min(1).optional(),
  ASFOUND_ACCESS_KEY_FILE: z.string().min(1).optional(),
  SIGN_IN_PROVIDERS_FILE: z.string().min(1).optional(),
  AUDIT_NOTES_FILE: z.string().min(1).optional(),
  AUDIT_NOTES_URL: z
    .string()
    .regex(/^https:\/\//, 'must begin with https://')
    .refine((text) => URL.canParse(text), 'is not an address that can be read')
    .optional(),
  OTEL_EXPORTER_OTLP_ENDPOINT: z
    .string()
    .regex(/^https?:\/\//, 'must begin with https:// or http://')
    .refine((text) => URL.canParse(text), 'is not a valid address')
    .optional(),
  OTEL_TRACES_SAMPLER_ARG: z
    .string()
    .regex(/^(?:0(?:\.\d+)?|1(?:\.0+)?)$/, 'must be from 0 to 1, for example 0.1')
    .transform(Number)
    .prefault('1'),
  STOP_WITHIN_SECONDS: whole(1, 600).prefault('20'),
} as const

export type Settings = Readonly<z.output<z.ZodObject<typeof SETTINGS>>>

export const quotasOf = (settings: Settings): Quotas => ({
  drafts: settings.QUOTA_DRAFTS,
  subscriptions: settings.QUOTA_SUBSCRIPTIONS,
  tokens: settings.QUOTA_TOKENS,
  photos: settings.QUOTA_PHOTOS_A_DAY,
  papers: settings.QUOTA_PAPERS_A_DAY,
  imports: settings.QUOTA_IMPORTS_A_DAY,
  uploadMb: settings.QUOTA_UPLOAD_MB_A_DAY,
})

/** Secrets that may come in a file, as a secret store mounts them. Keys are read from theirs by who needs them. */
const IN_FILES = ['DATABASE_URL', 'METRICS_TOKEN'] as const

/**
 * Settings from the environment, or every fault in plain words. An empty value counts as not given, which is
 * how shells and compose files write "none". No fault repeats a value: some are secret.
 */
export function readSettings(environment: NodeJS.ProcessEnv): Result<Settings, readonly string[]> {
  const given = Object.fromEntries(
    Object.keys(SETTINGS).map((name) => [name, environment[name] || undefined]),
  )
  const faults = IN_FILES.flatMap((name) => {
    const file = given[`${name}_FILE`]
    if (file === undefined) return []
    if (given[name] !== undefined) return [`${name} and ${name}_FILE are both set: set only one`]
    given[name] = textOf(file)
    return given[name] === undefined ? [`${name}_FILE names a file that is empty or cannot be read`] : []
  })
  const parsed = z.object(SETTINGS).safeParse(given)
  if (parsed.success && faults.length === 0) return ok(parsed.data)
  const issues = parsed.error?.issues ?? []
  return err([...issues.map(({ path: [name], message }) => `${String(name)} ${message}`), ...faults])
}

function textOf(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8').trim() || undefined
  } catch {
    return undefined
  }
}

/** For the programs: settings, or the faults on standard error and exit 1. */
export function settingsOrExit(environment: NodeJS.ProcessEnv = process.env): Settings {
  const settings = readSettings(environment)
  if (settings.ok) return settings.value
  const faults = settings.error.map((fault) => `  ${fault}\n`).join('')
  process.stderr.write(`Please correct these settings (docs/settings.md describes them):\n${faults}`)
  process.exit(1)
}
