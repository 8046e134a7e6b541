import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readCode } from '../../../letters/code.ts'
import { checkLetter } from '../../../operations/letters/check-letter.ts'
import { answered } from '../../api/answer.ts'
import { askView, checkedView } from './view.ts'

const typed = z.string().max(200)

/** The page that a letter's square of dots leads to: open to anyone who holds the code. */
export const letterCheck: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/letters',
    { config: { access: 'open' }, schema: { querystring: z.object({ code: typed.optional() }) } },
    async ({ query: { code = '' } }, reply) => {
      if (code.trim() === '') return reply.page(asking('', null))
      const read = readCode(code)
      return read.ok
        ? reply.redirect(`/letters/${read.value}`, 303)
        : reply.page(asking(code, mistyped(read.error)), 422)
    },
  )

  app.get(
    '/letters/:code',
    { config: { access: 'open' }, schema: { params: z.object({ code: typed }) } },
    async (request, reply) => {
      const { code } = request.params
      request.guesses.refuseGuesser()
      const answer = await checkLetter(request.context, code)
      if (answer.ok) {
        const { number } = answer.value.statement
        return reply.page({ title: `Letter ${number}`, body: checkedView(answer.value) })
      }
      request.guesses.noteMiss()
      const { error } = answer
      if (error.why === 'invalid') {
        return reply.page(asking(code, mistyped(error.issues[0]?.message ?? '')), 422)
      }
      return error.why === 'not-found' ? reply.page(asking(code, UNKNOWN), 404) : answered(answer)
    },
  )
}

const asking = (code: string, fault: string | null) => ({
  title: 'Check a letter',
  body: askView({ typed: code, fault }),
})

const mistyped = (message: string): string => `What was typed ${message}.`

const UNKNOWN =
  'No letter has this code. Compare it with the letter, sign by sign. If it is the same, the letter is not genuine.'
