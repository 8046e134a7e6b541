import fc from 'fast-check'
import type { InjectOptions } from 'fastify'
import { type Schema, schemaValues } from './schema-values.ts'
import { asSent, leaf, spoilt } from './spoilt.ts'

export type Parameter = { readonly name: string; readonly in: string; readonly schema: Schema }
export type Operation = {
  readonly method: string
  readonly path: string
  readonly parameters: readonly Parameter[]
  /** By media type. */
  readonly body: Readonly<Record<string, { readonly schema: Schema }>>
}
export type Asked = InjectOptions & { readonly method: 'GET'; readonly url: string }

type World = {
  readonly components: Readonly<Record<string, Schema>>
  /** What stands for a parameter of a path, by the part before it. */
  readonly ids: (before: string, name: string) => fc.Arbitrary<string>
  readonly anyId: fc.Arbitrary<string>
}

const asText = (value: unknown): string => (typeof value === 'string' ? value : (JSON.stringify(value) ?? ''))
const encoded = (text: string): string => encodeURIComponent(text.toWellFormed())
/** What a header can hold at all: the bytes of Latin-1 without controls. */
const headerText = fc.oneof(
  fc.constantFrom('"r1"', '*', 'W/"r1"', '"r99"', '""', 'r1', '"r1", "r2"', '"r99999999999999999999"'),
  fc.string({
    unit: fc
      .integer({ min: 0x20, max: 0xff })
      .filter((code) => code !== 0x7f)
      .map((code) => String.fromCharCode(code)),
    maxLength: 300,
  }),
)
const STRANGE_HEADERS = [
  'accept',
  'authorization',
  'if-none-match',
  'x-request-id',
  'range',
  'content-encoding',
  'x-forwarded-for',
  'cookie',
  'origin',
]
const TYPES = [
  'application/json',
  'text/plain',
  'application/x-www-form-urlencoded',
  'multipart/form-data; boundary=b',
  'application/xml',
  '',
  'application/json; charset=utf-16',
]

/** Requests to an operation: as it is described, described but for a few places, or with little in common with it. */
export function requestsTo(operation: Operation, { components, ids, anyId }: World): fc.Arbitrary<Asked> {
  const fitting = schemaValues(components, anyId)
  const { method, parameters } = operation
  const parts = operation.path.split('/')
  const wildPart = fc.oneof(leaf.map(asText), fc.constantFrom('%zz', '%00', '.', '..', '%2e%2e%2f'))

  const pathOf = (wild: boolean) =>
    fc
      .tuple(
        ...parts.map((part, at) => {
          const [, name, rest = ''] = /^\{(\w+)\}(.*)$/.exec(part) ?? []
          if (name === undefined) return fc.constant(part)
          const good = ids(parts[at - 1] ?? '', name).map(encoded)
          const any = wild
            ? fc.oneof(
                good,
                wildPart.map((text) => (text.startsWith('%') ? text : encoded(text))),
              )
            : good
          return any.map((text) => `${text}${rest}`)
        }),
      )
      .map((all) => all.join('/'))

  const queryOf = (wild: boolean) => {
    const named = parameters.filter((it) => it.in === 'query')
    const pairs = named.map(({ name, schema }) => {
      const value = wild ? fc.oneof(fitting(schema), leaf) : fitting(schema)
      return fc.option(
        value.map((it) => `${name}=${encoded(asText(it))}`),
        { nil: '' },
      )
    })
    const strange = wild
      ? [
          fc.option(
            leaf.map((it) => `${encoded(asText(it))}=1`),
            { nil: '' },
          ),
        ]
      : []
    return fc.tuple(...pairs, ...strange).map((all) => all.filter((pair) => pair !== '').join('&'))
  }

  const headersOf = (wild: boolean) => {
    const named = parameters.filter((it) => it.in === 'header').map(({ name }) => name)
    const goodOnes: Record<string, fc.Arbitrary<string>> = {
      'if-match': fc.constantFrom('"r1"', '"r2"', '"r99"'),
      'idempotency-key': fc.uuid(),
    }
    const good = Object.fromEntries(named.map((name) => [name, goodOnes[name] ?? headerText]))
    if (!wild) return fc.record(good)
    const strange = Object.fromEntries([...named, ...STRANGE_HEADERS].map((name) => [name, headerText]))
    return fc.record(strange, { requiredKeys: [] })
  }

  const [type, described] = Object.entries(operation.body)[0] ?? []
  const json = type === 'application/json' ? fitting(described!.schema) : undefined
  const form =
    type === 'multipart/form-data'
      ? fc.oneof(
          multipart(leaf.map(asText)),
          multipart(fc.constant('Parcel No,Permit Number\n07-0412-0032,75-1\n')),
          brokenForm,
        )
      : undefined
  const jsonBody = (value: unknown) => ({
    type: 'application/json',
    payload: asSent(value),
  })
  const none = fc.constant(undefined)
  const wildBody = fc.oneof(
    none,
    leaf.map(jsonBody),
    fc
      .tuple(fc.integer({ min: 10, max: 20_000 }), fc.constantFrom(['[', ']'], ['{"a":', '}'], ['[', '']))
      .map(([deep, [open, close]]) => ({
        type: 'application/json',
        payload: `${open!.repeat(deep)}${close === '}' ? '1' : ''}${close!.repeat(deep)}`,
      })),
    fc.record({
      type: fc.constantFrom(...TYPES),
      payload: fc.oneof(
        fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)),
        fc.string({ unit: 'binary' }),
        fc.constant('{"a":1'),
      ),
    }),
  )
  const valid = json?.map(jsonBody) ?? form ?? none
  const nearly = json?.chain(spoilt).map(jsonBody) ?? form ?? wildBody

  const requests = (
    wild: boolean,
    body: fc.Arbitrary<{ type: string; payload: string | Buffer } | undefined>,
  ) =>
    fc.tuple(pathOf(wild), queryOf(wild), headersOf(wild), body).map(([path, query, headers, sent]) => ({
      method: method as 'GET',
      url: query === '' ? path : `${path}?${query}`,
      headers: { ...headers, ...(sent && sent.type !== '' ? { 'content-type': sent.type } : {}) } as Record<
        string,
        string
      >,
      ...(sent && method !== 'GET' ? { payload: sent.payload } : {}),
    }))
  return fc.oneof(
    requests(false, valid),
    requests(false, nearly),
    requests(true, fc.oneof(valid, nearly, wildBody)),
  )
}

/** A form with its file, under the names that the service takes, and of any content. */
const multipart = (content: fc.Arbitrary<string>): fc.Arbitrary<{ type: string; payload: Buffer }> =>
  fc
    .tuple(
      content,
      fc.constantFrom('file', 'photo', 'kind', '__proto__'),
      fc.constantFrom('permits', 'parcels', 'findings', '\u0000'),
    )
    .map(([text, name, kind]) => ({
      type: 'multipart/form-data; boundary=edge',
      payload: Buffer.from(
        `--edge\r\nContent-Disposition: form-data; name="kind"\r\n\r\n${kind}\r\n--edge\r\nContent-Disposition: form-data; ` +
          `name="${name}"; filename="a.csv"\r\nContent-Type: text/csv\r\n\r\n${text.toWellFormed()}\r\n--edge--\r\n`,
      ),
    }))

/** A form that was cut somewhere, or whose boundary is another, too long, empty or not said. */
const brokenForm: fc.Arbitrary<{ type: string; payload: Buffer }> = fc
  .tuple(
    multipart(fc.constant('%PDF-1.7')),
    fc.nat(400),
    fc.constantFrom('edge', 'edge', 'b', '', '""', 'e'.repeat(300)),
  )
  .map(([{ payload }, length, edge]) => ({
    type: `multipart/form-data${edge === '' ? '' : `; boundary=${edge}`}`,
    payload: payload.subarray(0, length),
  }))
