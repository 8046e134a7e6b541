import { readFileSync } from 'node:fs'
import swagger from '@fastify/swagger'
import swaggerUi from '@fastify/swagger-ui'
import type { FastifyContextConfig, FastifyInstance, FastifyPluginAsync } from 'fastify'
import { createJsonSchemaTransform, createJsonSchemaTransformObject } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { describedField } from '../../words/fields.ts'
import { PROBLEMS, type ProblemName } from '../problem-catalog.ts'
import { describeAnswers } from './describe-answers.ts'
import { tidyComponents } from './tidy-components.ts'

/**
 * In place of the library's own override, which empties unions of values that are read into something else. Examples
 * of such values are left out by zod, which takes them for examples of what is read; here they are of what is written.
 */
const zodToJsonConfig = {
  override: ({ zodSchema, jsonSchema }: { zodSchema: z.core.$ZodType; jsonSchema: object }) => {
    const { examples, field } = z.globalRegistry.get(zodSchema) ?? {}
    if (examples) Object.assign(jsonSchema, { examples })
    if (field !== undefined) describeField(field, jsonSchema)
  },
}

/** What the field is called and means, then how its value is written. */
function describeField(at: string, schema: { description?: string; field?: string }): void {
  const written = schema.description
  delete schema.field
  schema.description = [describedField(at), written].filter(Boolean).join('. ')
}

const describeSchemas = createJsonSchemaTransform({ zodToJsonConfig })
const describeComponents = createJsonSchemaTransformObject({ zodToJsonConfig })

type Transform = typeof describeSchemas
type Route = Parameters<Transform>[0]['route']

const { version } = JSON.parse(readFileSync(new URL('../../../package.json', import.meta.url), 'utf8')) as {
  readonly version: string
}

const MARK = `<svg xmlns="http://www.w3.org/2000/svg" width="220" height="40" role="img" aria-label="Asfound">
<g fill="none" stroke="#fff" stroke-width="2"><path d="M4 12h32M8 12v16h24V12" stroke-dasharray="3 2"/><path d="M8 14v17h25V14"/></g>
<text x="48" y="27" font-family="sans-serif" font-size="19" fill="#fff">Asfound</text></svg>`

/** The API description (OpenAPI 3.1), made from the schemas that also validate; and its page at /docs, which needs no network. */
export async function describeApi(app: FastifyInstance): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.1',
      info: {
        title: 'Asfound',
        version,
        description:
          'County permit-record reconciliation: what the file says was built, compared with what was found in the ground. ' +
          'Nothing here is a legal finding: local codes and licensed practice govern.',
        license: { name: 'Proprietary', url: '/docs' },
      },
      servers: [{ url: '/' }],
      components: { securitySchemes: { token: { type: 'http', scheme: 'bearer' } } },
      security: [{ token: [] }],
    },
    transform: describeRoute as Transform,
    transformObject: (document) => tidyComponents(describeComponents(document)),
  })
  const docsPage: FastifyPluginAsync = async (scope) => {
    scope.addHook('onRoute', (route) => {
      route.config = { ...route.config, access: 'open' }
    })
    await scope.register(swaggerUi, {
      routePrefix: '/docs',
      logo: { type: 'image/svg+xml', content: MARK, href: '/docs' },
      theme: { title: 'Asfound: the API' },
      uiConfig: { docExpansion: 'none', deepLinking: true },
      // The policy of all other pages: its own would take styles and fonts from anywhere.
      staticCSP: false,
    })
  }
  await app.register(docsPage)
  app.get('/openapi.json', { config: { access: 'open' }, schema: { hide: true } }, async (_request, reply) =>
    reply.type('application/json; charset=utf-8').serializer(JSON.stringify).send(app.swagger()),
  )
}

const describeRoute = (document: Parameters<Transform>[0]) => {
  const described = describeSchemas(document)
  const schema = (described.schema ?? {}) as Record<string, unknown>
  if (schema.hide) return described
  const { route } = document
  const config = (route.config ?? {}) as FastifyContextConfig
  return {
    ...described,
    schema: {
      ...schema,
      ...(config.access === 'open' ? { security: [] } : {}),
      ...headersOf(config, schema),
      response: {
        ...problemsOf(route, config),
        ...describeAnswers(
          route.method,
          config,
          schema.querystring as Readonly<Record<string, unknown>> | undefined,
          schema.response as Readonly<Record<string, Readonly<Record<string, unknown>>>> | undefined,
        ),
      },
    },
  }
}

function headersOf(config: FastifyContextConfig, schema: Record<string, unknown>) {
  const properties = {
    ...(config.idempotent
      ? {
          'idempotency-key': {
            type: 'string',
            maxLength: 255,
            description: 'One key for each action: a repeat with the same key gets the first answer',
            examples: ['01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11'],
          },
        }
      : {}),
    ...(config.replaces
      ? { 'if-match': { type: 'string', description: 'ETag of the version to replace', examples: ['"r3"'] } }
      : {}),
  }
  if (Object.keys(properties).length === 0) return {}
  const required = config.replaces ? ['if-match'] : []
  const declared = (schema.headers ?? {}) as { properties?: object; required?: string[] }
  return {
    headers: {
      type: 'object',
      properties: { ...declared.properties, ...properties },
      required: [...(declared.required ?? []), ...required],
    },
  }
}

/** The problems a route can answer by what it declares; its own come on top. */
function problemsOf({ method, url, schema }: Route, config: FastifyContextConfig) {
  const { access, idempotent, replaces, administers } = config
  const declared = (schema ?? {}) as { body?: unknown; querystring?: unknown; params?: unknown }
  const takes =
    declared.body !== undefined || declared.querystring !== undefined || declared.params !== undefined
  const writes = method !== 'GET'
  const names: ProblemName[] = [
    // Whoever sends a body is refused by it before it is known that none is wanted.
    ...(writes ? (['too-large', 'unsupported-type'] as const) : []),
    ...(writes || takes ? (['unreadable-request'] as const) : []),
    ...(writes && (url.includes(':') || administers) ? (['conflict'] as const) : []),
    ...(access === 'open' ? [] : (['not-signed-in', 'not-allowed'] as const)),
    ...(url.includes(':') || (access !== 'open' && access?.length !== 3) ? (['not-found'] as const) : []),
    ...(idempotent ? (['still-working'] as const) : []),
    ...(replaces ? (['stale', 'version-needed'] as const) : []),
    ...(takes || idempotent ? (['invalid-input'] as const) : []),
    'too-many-requests',
    'unavailable',
  ]
  return Object.fromEntries(
    names.map((name) => [
      PROBLEMS[name].status,
      {
        description: PROBLEMS[name].title,
        content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
      },
    ]),
  )
}
