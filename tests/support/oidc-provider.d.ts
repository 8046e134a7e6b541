/** As much of it as the tests' issuer uses: its own types would bring those of a whole web framework. */
declare module 'oidc-provider' {
  import type { IncomingMessage, ServerResponse } from 'node:http'

  type Interaction = {
    readonly prompt: { readonly name: string }
    readonly params: { readonly client_id: string }
  }
  export default class Provider {
    constructor(issuer: string, configuration: object)
    callback(): (request: IncomingMessage, response: ServerResponse) => void
    interactionDetails(request: IncomingMessage, response: ServerResponse): Promise<Interaction>
    interactionFinished(request: IncomingMessage, response: ServerResponse, result: object): Promise<void>
    Grant: new (of: {
      accountId: string
      clientId: string
    }) => {
      addOIDCScope(scope: string): void
      save(): Promise<string>
    }
  }
}
