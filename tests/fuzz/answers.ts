import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import addFormats from 'ajv-formats'
import type { LightMyRequestResponse } from 'fastify'

type Described = {
  readonly paths: Readonly<
    Record<
      string,
      Readonly<
        Record<string, { readonly responses: Readonly<Record<string, { readonly content?: object }>> }>
      >
    >
  >
}

const pointer = (...steps: readonly string[]): string =>
  steps.map((step) => encodeURIComponent(step.replaceAll('~', '~0').replaceAll('/', '~1'))).join('/')

type Told = { readonly pointer: string; readonly message: string }

/** Input that is refused is pointed to, in words of this service; what can't be pointed to is told in a sentence. */
function unhelpful(answer: LightMyRequestResponse): string | undefined {
  const { type, detail, errors = [] } = answer.json() as { type?: string; detail?: string; errors?: Told[] }
  if (answer.statusCode !== 422 || type !== '/problems/invalid-input') return undefined
  if (errors.length === 0 && !detail) return 'input is refused, and not said why'
  const wrong = errors.find(
    ({ pointer, message }) => !/^(\/.*)?$/s.test(pointer) || /^(Invalid input.*|undefined)?$/s.test(message),
  )
  return wrong && `input is refused by ${JSON.stringify(wrong)}`
}

/** What is wrong with an answer as the description has it: a status or type it does not name, or a body that does not fit. */
export function answerChecker(document: Described) {
  const ajv = new Ajv2020({ strict: false, allErrors: true, formats: { binary: true } })
  addFormats.default(ajv)
  ajv.addSchema(document, 'openapi')
  const compiled = new Map<string, ValidateFunction>()

  return (method: string, path: string, answer: LightMyRequestResponse): string | undefined => {
    const status = String(answer.statusCode)
    const described = document.paths[path]?.[method.toLowerCase()]?.responses[status]
    if (described === undefined) return `the status ${status} is not described`
    const sent = String(answer.headers['content-type'] ?? '').split(';')[0]!
    const types = Object.keys(described.content ?? {})
    if (types.length === 0 || sent === '')
      return answer.body === '' ? undefined : `a body with ${status}, where none is described`
    const type = types.find((it) => it === sent || (it.endsWith('/*') && sent.startsWith(it.slice(0, -1))))
    if (type === undefined) return `${sent} with ${status}, where ${types.join(', ')} is described`
    if (!type.endsWith('json') || type.includes('geo') || type.includes('nd')) return undefined
    const at = `openapi#/${pointer('paths', path, method.toLowerCase(), 'responses', status, 'content', type, 'schema')}`
    const validate = compiled.get(at) ?? ajv.compile({ $ref: at })
    compiled.set(at, validate)
    return validate(answer.json()) ? unhelpful(answer) : ajv.errorsText(validate.errors)
  }
}
