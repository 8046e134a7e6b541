import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import Provider from 'oidc-provider'
import { afterAll } from 'vitest'

type Claims = { readonly sub: string; readonly email: string; readonly email_verified: boolean }
type Issuer = {
  readonly issuer: string
  /** Goes to an address of it as somebody does in a browser, signs in as `claims.sub`, and says where it leads back to. */
  readonly passThrough: (address: string) => Promise<URL>
}

/**
 * An OpenID provider of another project's making (oidc-provider, certified by the OpenID Foundation), on this machine,
 * that lets everybody in as whom `claims` says.
 */
export async function openIssuer(
  client: { id: string; secret: string; redirects: string[] },
  claims: () => Claims,
): Promise<Issuer> {
  const server = createServer()
  await new Promise<void>((resolve) => void server.listen(0, '127.0.0.1', resolve))
  afterAll(() => {
    server.closeAllConnections()
    server.close()
  })
  const issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  const provider = new Provider(issuer, {
    clients: [
      {
        client_id: client.id,
        client_secret: client.secret,
        redirect_uris: client.redirects,
        grant_types: ['authorization_code'],
        response_types: ['code'],
      },
    ],
    pkce: { required: () => true },
    claims: { openid: ['sub'], email: ['email', 'email_verified'] },
    conformIdTokenClaims: false,
    features: { devInteractions: { enabled: false } },
    findAccount: async (_: unknown, id: string) => ({
      accountId: id,
      claims: async () => ({ ...claims(), sub: id }),
    }),
    cookies: { keys: ['for the test'] },
  })
  const serve = provider.callback()
  server.on('request', async (request, response) => {
    if (!request.url?.startsWith('/interaction/')) return serve(request, response)
    const { prompt, params } = await provider.interactionDetails(request, response)
    const accountId = claims().sub
    if (prompt.name === 'login')
      return provider.interactionFinished(request, response, { login: { accountId } })
    const grant = new provider.Grant({ accountId, clientId: params.client_id })
    grant.addOIDCScope('openid email')
    return provider.interactionFinished(request, response, { consent: { grantId: await grant.save() } })
  })
  const passThrough = async (address: string): Promise<URL> => {
    const jar = new Map<string, string>()
    let next = address
    for (let hop = 0; hop < 12; hop++) {
      const cookie = [...jar].map(([name, value]) => `${name}=${value}`).join('; ')
      const answer = await fetch(next, { redirect: 'manual', headers: { cookie } })
      for (const set of answer.headers.getSetCookie()) {
        const [, name, value] = /^([^=]+)=([^;]*)/.exec(set) ?? []
        if (name !== undefined) jar.set(name, value ?? '')
      }
      const location = answer.headers.get('location')
      if (location === null) throw new Error(`${answer.status} at ${next}: ${await answer.text()}`)
      next = new URL(location, next).href
      if (!next.startsWith(issuer)) return new URL(next)
    }
    throw new Error('the issuer goes in circles')
  }
  return { issuer, passThrough }
}
