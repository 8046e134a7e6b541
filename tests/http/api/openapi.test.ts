import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import os from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import { afterAll, describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'

const { ask } = await testApp()
const document = (await ask('nobody', { url: '/openapi.json' })).body
const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-openapi-'))
afterAll(() => rm(folder, { recursive: true }))

const root = path.resolve(import.meta.dirname, '../../..')

type Operation = {
  summary?: string
  operationId?: string
  tags?: string[]
  requestBody?: { content: Record<string, { schema: object }> }
  responses: Record<string, { description: string; content?: object }>
}
const operations: readonly (readonly [string, Operation])[] = Object.entries(
  document.paths as Record<string, Record<string, Operation>>,
).flatMap(([url, methods]) =>
  Object.entries(methods).map(
    ([method, operation]) => [`${method.toUpperCase()} ${url}`, operation] as const,
  ),
)

/** Runs the linter as its command does; it exits with 1 where anything is at fault. */
async function lint(): Promise<string> {
  const file = path.join(folder, 'openapi.json')
  await writeFile(file, JSON.stringify(document))
  const redocly = createRequire(import.meta.url).resolve('@redocly/cli/bin/cli.js')
  const args = [redocly, 'lint', file, '--config', path.join(root, '.redocly.yaml'), '--format', 'json']
  const environment = { ...process.env, REDOCLY_TELEMETRY: 'off', REDOCLY_SUPPRESS_UPDATE_NOTICE: 'true' }
  const run = promisify(execFile)(process.execPath, args, { env: environment, maxBuffer: 1e8 })
  const { stdout } = await run.catch((fault: { stdout: string }) => fault)
  return stdout
}

describe('the API description', () => {
  test('is lint-free', async () => {
    const report = JSON.parse(await lint()) as {
      problems: { message: string; location: { pointer?: string }[] }[]
    }
    const told = report.problems.map(({ message, location }) => `${location[0]?.pointer}: ${message}`)
    expect(told).toEqual([])
  }, 60_000)

  test('knows every address of the contract', () => {
    const known = operations.map(([name]) => name)
    for (const name of [
      'GET /v1/counties',
      'GET /v1/counties/{county}',
      'GET /v1/counties/{county}/parcels',
      'GET /v1/counties/{county}/parcels/{parcel}',
      'POST /v1/counties/{county}/parcels/{parcel}/permits',
      'PUT /v1/counties/{county}/permits/{id}',
      'GET /v1/counties/{county}/parcels/{parcel}/as-built',
      'POST /v1/counties/{county}/parcels/{parcel}/findings',
      'PUT /v1/counties/{county}/findings/{id}',
      'POST /v1/counties/{county}/findings/{id}/submission',
      'GET /v1/counties/{county}/parcels/{parcel}/reconciliation',
      'GET /v1/counties/{county}/reconciliations/{id}',
      'POST /v1/reconciliations/trial',
      'GET /v1/counties/{county}/discrepancies',
      'POST /v1/counties/{county}/discrepancies/{id}/decisions',
      'GET /v1/counties/{county}/parcels/{parcel}/status',
      'POST /v1/counties/{county}/documents',
      'GET /v1/counties/{county}/documents/{id}',
      'POST /v1/counties/{county}/documents/{id}/transcription',
      'GET /v1/counties/{county}/jobs/{id}',
      'POST /v1/calculations/tank-capacity',
      'POST /v1/calculations/absorption-area',
      'POST /v1/calculations/code-capacity',
      'POST /v1/calculations/tie-location',
      'POST /v1/calculations/solids',
      'GET /v1/rules',
      'GET /v1/rules/{place}/{topic}',
    ]) {
      expect(known).toContain(name)
    }
  })

  test.each(operations)('%s says what it is, and shows what it takes', (_, operation) => {
    expect(operation.summary).toMatch(/^[A-Z].{5,}$/)
    expect(operation.tags).toHaveLength(1)
    // A file that is sent has no example that would fit here.
    const { 'multipart/form-data': _file, ...written } = operation.requestBody?.content ?? {}
    for (const { schema } of Object.values(written)) {
      const name = /#\/components\/schemas\/(.+)$/.exec((schema as { $ref?: string }).$ref ?? '')?.[1]
      const shown = name ? document.components.schemas[name] : schema
      expect(shown.examples ?? shown.example).toBeDefined()
    }
    for (const { description } of Object.values(operation.responses)) {
      expect(description).not.toBe('Default Response')
    }
  })
})
