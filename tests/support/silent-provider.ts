import type { Provider } from '../../src/net/sign-in-provider.ts'
import { COUNTY } from './people.ts'

const silentProvider: Provider = {
  settings: {
    county: COUNTY,
    title: 'Quillback County',
    issuer: 'https://sign-in.example',
    clientId: 'asfound',
    clientSecret: undefined,
    secondStep: 'here',
  },
  leave: async () => ({
    address: new URL('https://sign-in.example/'),
    leaving: { state: '', nonce: '', verifier: '' },
  }),
  comeBack: async () => ({ ok: false, error: 'nobody came' }),
}

/** A county's own sign-in from which nobody comes back; signing in by one is tested in signing-in.test.ts. */
export const silentProviders: ReadonlyMap<string, Provider> = new Map([[COUNTY, silentProvider]])
