import { randomBytes } from 'node:crypto'
import { Secret, TOTP } from 'otpauth'

/** As every authenticator takes them (RFC 6238; the figures are the RFC's defaults). */
const ALGORITHM = 'SHA1'
const DIGITS = 6
const PERIOD_SECONDS = 30
/** Steps of time before and after now that are taken too, for clocks that differ (RFC 6238, 5.2: at most one). */
const WINDOW = 1
/** RFC 4226, section 4, R6: 160 bits are recommended. */
const SECRET_BYTES = 20

export const newSecret = (): string =>
  new Secret({ buffer: new Uint8Array(randomBytes(SECRET_BYTES)).buffer }).base32

const totp = (secret: string, label = 'account') =>
  new TOTP({
    issuer: 'Asfound',
    label,
    algorithm: ALGORITHM,
    digits: DIGITS,
    period: PERIOD_SECONDS,
    secret: Secret.fromBase32(secret),
  })

/** For an authenticator to read as a QR code. */
export const secretAddress = (secret: string, label: string): string => totp(secret, label).toString()

/** The step of time a code belongs to, or undefined where it is none of now. Blanks in it do not matter. */
export function stepOfCode(secret: string, code: string, at: Date): number | undefined {
  const token = code.replaceAll(/\s/g, '')
  if (!/^\d{6}$/.test(token)) return undefined
  const timestamp = at.getTime()
  const delta = totp(secret).validate({ token, timestamp, window: WINDOW })
  return delta === null ? undefined : Math.floor(timestamp / 1_000 / PERIOD_SECONDS) + delta
}

/** The code of a moment, for tests and for nothing else that this service does. */
export const codeAt = (secret: string, at: Date): string => totp(secret).generate({ timestamp: at.getTime() })
