import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readCode } from '../../../letters/code.ts'
import { checkLetter } from '../../../operations/letters/check-letter.ts'
import { codeFaultInWords } from '../../../words/letter-code.ts'
import { answered } from '../../api/answer.ts'
import { languageOf } from '../language.ts'
import { CHECKED, CODE_FORM } from './copy.ts'
import { askView, checkedView } from './view.ts'

const typed = z.string().max(200)

/** The page that a letter's QR code leads to: open to anyone who holds the code. */
export const letterCheck: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/letters',
    { config: { access: 'open' }, schema: { querystring: z.object({ code: typed.optional() }) } },
    async (request, reply) => {
      const { code = '' } = request.query
      if (code.trim() === '') return ask(request, reply, '', null)
      const read = readCode(code)
      if (read.ok) return reply.redirect(`/letters/${read.value}`, 303)
      return ask(request, reply, code, codeFaultInWords(read.error, languageOf(request)), 422)
    },
  )

  app.get(
    '/letters/:code',
    { config: { access: 'open' }, schema: { params: z.object({ code: typed }) } },
    async (request, reply) => {
      const { code } = request.params
      const language = languageOf(request)
      request.guesses.refuseGuesser()
      const read = readCode(code)
      if (!read.ok) {
        request.guesses.noteMiss()
        return ask(request, reply, code, codeFaultInWords(read.error, language), 422)
      }
      const answer = await checkLetter(request.context, code)
      if (answer.ok) {
        const title = CHECKED.title[language](answer.value.statement.number)
        return reply.page({ title, language, body: checkedView(answer.value, language) })
      }
      request.guesses.noteMiss()
      if (answer.error.why !== 'not-found') return answered(answer)
      return ask(request, reply, code, CODE_FORM.unknown[language], 404)
    },
  )
}

function ask(
  request: FastifyRequest,
  reply: FastifyReply,
  code: string,
  fault: string | null,
  status = 200,
): Promise<FastifyReply> {
  const language = languageOf(request)
  const body = askView({ typed: code, fault }, language)
  return reply.page({ title: CODE_FORM.title[language], language, body }, status)
}
