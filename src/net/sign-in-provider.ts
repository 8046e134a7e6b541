import {
  allowInsecureRequests,
  authorizationCodeGrant,
  buildAuthorizationUrl,
  ClientSecretBasic,
  type Configuration,
  calculatePKCECodeChallenge,
  discovery,
  None,
  randomNonce,
  randomPKCECodeVerifier,
  randomState,
} from 'openid-client'
import { OutsideFailure } from '../base/outside-failure.ts'
import { err, ok, type Result } from '../base/result.ts'

/** A county's own sign-in (OpenID Connect Core 1.0), as the operator set it up. */
export type ProviderSettings = {
  /** The county whose department signs in so. */
  readonly county: string
  /** What people know it by. */
  readonly title: string
  readonly issuer: string
  readonly clientId: string
  readonly clientSecret: string | undefined
  /** Whether it has two-step sign-in, or this service is to ask for the code. */
  readonly secondStep: 'here' | 'provider'
}

/** What has to be remembered between leaving for the provider and coming back. */
export type Leaving = { readonly state: string; readonly nonce: string; readonly verifier: string }

export type Identity = {
  readonly issuer: string
  readonly subject: string
  /** Only one that the provider has verified. */
  readonly email: string | null
}

export type Provider = {
  readonly settings: ProviderSettings
  /** Where to send a person, and what to remember. Throws OutsideFailure when the provider does not answer. */
  readonly leave: (returnTo: string) => Promise<{ readonly address: URL; readonly leaving: Leaving }>
  /** Who came back, or why that can't be told; `address` is where they came back to, whole. */
  readonly comeBack: (address: URL, leaving: Leaving) => Promise<Result<Identity, string>>
}

const REMEMBER_MS = 3_600_000
const ANSWER_SECONDS = 10
const ON_THIS_MACHINE = /^http:\/\/(localhost|127\.0\.0\.1)(:\d+)?(\/|$)/

/** Asks nothing of the provider before somebody signs in. Authorization code with PKCE, state and nonce. */
export function openProvider(settings: ProviderSettings, now: () => number = Date.now): Provider {
  let known: { readonly configuration: Promise<Configuration>; readonly until: number } | undefined

  const configured = async (): Promise<Configuration> => {
    if (!known || known.until < now()) {
      known = { configuration: discovered(settings), until: now() + REMEMBER_MS }
    }
    try {
      return await known.configuration
    } catch (cause) {
      known = undefined
      throw new OutsideFailure(`The sign-in of ${settings.title} does not answer`, {
        cause,
        retryAfterSeconds: 30,
      })
    }
  }

  return {
    settings,
    leave: async (returnTo) => {
      const configuration = await configured()
      const leaving = { state: randomState(), nonce: randomNonce(), verifier: randomPKCECodeVerifier() }
      const address = buildAuthorizationUrl(configuration, {
        redirect_uri: returnTo,
        scope: 'openid email',
        state: leaving.state,
        nonce: leaving.nonce,
        code_challenge: await calculatePKCECodeChallenge(leaving.verifier),
        code_challenge_method: 'S256',
      })
      return { address, leaving }
    },
    comeBack: async (address, { state, nonce, verifier }) => {
      const configuration = await configured()
      try {
        const tokens = await authorizationCodeGrant(configuration, address, {
          pkceCodeVerifier: verifier,
          expectedState: state,
          expectedNonce: nonce,
          idTokenExpected: true,
        })
        const claims = tokens.claims()
        if (!claims) return err('it did not say who signed in')
        const { iss, sub, email, email_verified } = claims
        const verified = email_verified === true && typeof email === 'string'
        return ok({ issuer: iss, subject: sub, email: verified ? email.toLowerCase() : null })
      } catch (fault) {
        return err(codeOf(fault))
      }
    },
  }
}

function discovered({ issuer, clientId, clientSecret }: ProviderSettings): Promise<Configuration> {
  return discovery(
    new URL(issuer),
    clientId,
    undefined,
    clientSecret === undefined ? None() : ClientSecretBasic(clientSecret),
    // Unencrypted only where nothing leaves this machine.
    { timeout: ANSWER_SECONDS, execute: ON_THIS_MACHINE.test(issuer) ? [allowInsecureRequests] : [] },
  )
}

/** The kind of fault and nothing of what was sent: codes and tokens stay out of logs. */
const codeOf = (fault: unknown): string => {
  const { code, error } = fault as { readonly code?: unknown; readonly error?: unknown }
  return [code, error].find((one) => typeof one === 'string')?.toString() ?? 'it answered something else'
}
