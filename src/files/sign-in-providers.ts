import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { z } from 'zod'
import { OutsideFailure } from '../base/outside-failure.ts'
import type { ProviderSettings } from '../net/sign-in-provider.ts'

const provider = z.strictObject({
  title: z.string().min(1).max(80),
  issuer: z
    .string()
    .refine(
      (text) => /^https:\/\/|^http:\/\/(localhost|127\.0\.0\.1)\b/.test(text),
      'must begin with https://',
    ),
  clientId: z.string().min(1),
  /** A secret is not written into a file of settings: here is the file that holds it. */
  clientSecretFile: z.string().min(1).optional(),
  secondStep: z.enum(['here', 'provider']).default('here'),
})
const providers = z.record(
  z.string().regex(/^[a-z][a-z0-9-]{1,39}$/, 'is not the name of a county'),
  provider,
)

/**
 * The counties' own sign-ins from a JSON file, an object by county: see docs/access.md. None where no file is set.
 * Throws OutsideFailure with every fault of the file.
 */
export async function readSignInProviders(file: string | undefined): Promise<readonly ProviderSettings[]> {
  if (file === undefined) return []
  const parsed = providers.safeParse(await jsonOf(file))
  if (!parsed.success) {
    const faults = parsed.error.issues.map(({ path: at, message }) => `${at.join('.')} ${message}`)
    throw new OutsideFailure(`${file} cannot be used: ${faults.join('; ')}`)
  }
  return Promise.all(
    Object.entries(parsed.data).map(async ([county, { clientSecretFile, ...settings }]) => ({
      county,
      ...settings,
      clientSecret:
        clientSecretFile === undefined
          ? undefined
          : (await textOf(path.resolve(path.dirname(file), clientSecretFile))).trim(),
    })),
  )
}

async function jsonOf(file: string): Promise<unknown> {
  const text = await textOf(file)
  try {
    return JSON.parse(text)
  } catch {
    throw new OutsideFailure(`${file} is not JSON`)
  }
}

const textOf = (file: string): Promise<string> =>
  readFile(file, 'utf8').catch((cause: Error) => {
    throw new OutsideFailure(`${file} cannot be read`, { cause })
  })
