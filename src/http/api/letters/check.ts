import type { FastifyRequest } from 'fastify'
import { checkLetter, type LetterChecked } from '../../../operations/letters/check-letter.ts'
import { problem } from '../../problem.ts'
import { answered } from '../answer.ts'

/** Checks a code for whoever asks; an address that asks for many that are not there is turned away for a while. */
export async function checkedFor(request: FastifyRequest, code: string): Promise<LetterChecked> {
  request.guesses.refuseGuesser()
  const answer = await checkLetter(request.context, code)
  if (answer.ok) return answer.value
  request.guesses.noteMiss()
  if (answer.error.why !== 'invalid') return answered(answer)
  throw problem('invalid-input', { errors: answer.error.issues.map((issue) => ({ in: 'path', ...issue })) })
}
