import { z } from 'zod'
import { PROBLEMS, type ProblemName } from './problem-catalog.ts'

/** One fault in what was sent. `pointer` is a JSON Pointer (RFC 6901) into the part that `in` names. */
export type Fault = {
  readonly in: 'body' | 'path' | 'query' | 'header'
  readonly pointer: string
  readonly message: string
}

type Extras = {
  /** What this case is about, in a sentence; never a secret, never another's data. */
  readonly detail?: string
  readonly errors?: readonly Fault[]
  readonly headers?: Readonly<Record<string, string>>
}

/** More than anybody fixes before sending it again; and whoever sends a megabyte of nonsense is not sent eight back. */
const MOST_FAULTS = 100
const LONGEST_POINTER = 300
const LONGEST_MESSAGE = 1_000

const shortened = ({ in: part, pointer, message }: Fault): Fault => ({
  in: part,
  pointer: pointer.slice(0, LONGEST_POINTER),
  message: message.slice(0, LONGEST_MESSAGE),
})

/** Thrown by a route to answer with a problem of the catalog (RFC 9457); the transaction around it is undone. */
export class Problem extends Error {
  override readonly name = 'Problem'
  readonly kind: ProblemName
  readonly status: number
  readonly detail: string | undefined
  readonly errors: readonly Fault[] | undefined
  readonly headers: Readonly<Record<string, string>>

  constructor(kind: ProblemName, { detail, errors, headers = {} }: Extras = {}) {
    super(detail ?? PROBLEMS[kind].title)
    this.kind = kind
    this.status = PROBLEMS[kind].status
    const left = (errors?.length ?? 0) - MOST_FAULTS
    this.detail = detail ?? (left > 0 ? `These are ${MOST_FAULTS} of ${errors?.length} faults.` : undefined)
    this.errors = errors?.slice(0, MOST_FAULTS).map(shortened)
    this.headers = headers
  }
}

/** `throw problem('conflict', { detail: 'These findings were submitted on 3 May.' })` */
export const problem = (kind: ProblemName, extras?: Extras): Problem => new Problem(kind, extras)

/** Bad input found past the schemas, by an operation; its pointers are into the body. */
export const invalidInput = (
  issues: readonly { readonly pointer: string; readonly message: string }[],
): Problem => new Problem('invalid-input', { errors: issues.map((issue) => ({ in: 'body', ...issue })) })

export const problemSchema = z
  .object({
    type: z.string().meta({ description: 'Which kind of problem: stable, and an address that explains it' }),
    title: z.string(),
    status: z.int(),
    detail: z.string().optional(),
    requestId: z.string().meta({ description: 'To find the request in the logs' }),
    errors: z
      .array(
        z.object({
          in: z.enum(['body', 'path', 'query', 'header']),
          pointer: z.string().meta({ description: 'JSON Pointer (RFC 6901)' }),
          message: z.string(),
        }),
      )
      .optional()
      .meta({ description: 'Every fault found, not only the first' }),
  })
  .meta({
    id: 'Problem',
    description: 'A problem (RFC 9457)',
    examples: [
      {
        type: '/problems/invalid-input',
        title: PROBLEMS['invalid-input'].title,
        status: 422,
        requestId: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11',
        errors: [{ in: 'body', pointer: '/components/0/lengthFt', message: 'write a length, as 8\'-6"' }],
      },
    ],
  })

export type ProblemBody = z.output<typeof problemSchema>

export const problemBody = (problem: Problem, requestId: string): ProblemBody => ({
  type: `/problems/${problem.kind}`,
  title: PROBLEMS[problem.kind].title,
  status: problem.status,
  ...(problem.detail === undefined ? {} : { detail: problem.detail }),
  requestId,
  ...(problem.errors === undefined ? {} : { errors: [...problem.errors] }),
})
