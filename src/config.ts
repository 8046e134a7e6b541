import { readFileSync } from 'node:fs'
import path from 'node:path'
import { z } from 'zod'
import { err, ok, type Result } from './base/result.ts'

const whole = (least: number, most: number) =>
  z
    .string()
    .regex(/^\d+$/, 'is not a whole number')
    .transform(Number)
    .refine((value) => value >= least && value <= most, `must be from ${least} to ${most}`)

const choice = <const T extends readonly [string, ...string[]]>(...words: T) =>
  z.enum(words, `must be one of: ${words.join(', ')}`)

const onOff = choice('on', 'off').transform((word) => word === 'on')

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
  BODY_LIMIT_KB: whole(16, 100_000).prefault('1024'),
  UPLOAD_LIMIT_MB: whole(1, 2_000).prefault('500'),
  REQUESTS_PER_MINUTE: whole(1, 1_000_000).prefault('1200'),
  TRUST_PROXY: onOff.prefault('off'),
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
