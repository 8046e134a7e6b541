import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { LetterKind } from '../../../letters/content/frame.ts'
import { issueLetter, LETTERS_FOR } from '../../../operations/letters/issue-letter.ts'
import { listLetters } from '../../../operations/letters/read-letter.ts'
import { LANGUAGES, type Language } from '../../../words/language.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../../api/answer.ts'
import { lettersInTurn } from '../../api/letters/in-turn.ts'
import { problem } from '../../problem.ts'
import { letterPdfPath } from '../layout/addresses.ts'

const params = z.object({ county: z.string(), parcel: z.string() })

const languageOf = (chosen: unknown): Language => LANGUAGES.find((it) => it === chosen) ?? 'en'

/** Makes a letter and goes to it. */
export const letter: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/parcels/:parcel/letters',
    { config: { access: ALL_ROLES, inTurn: lettersInTurn }, schema: { params } },
    async ({ context, actor, params: { parcel }, body }, reply) => {
      const { kind, newest, language } = (body ?? {}) as Readonly<Record<string, unknown>>
      const wanted = LETTERS_FOR[actor.role].find((it): it is LetterKind => it === kind)
      if (wanted === undefined) throw problem('unreadable-request')
      const { letters } = answered(await listLetters(context, actor, parcel))
      const [last] = letters
      // Of the letters, the status letter alone is in other languages.
      const inLanguage = wanted === 'status' ? languageOf(language) : 'en'
      // Pressed twice: the letter that the first press made is the one that was asked for.
      const again = last && last.id !== newest && last.kind === wanted && last.issuedBy === actor.account
      const made = again
        ? last
        : answered(await issueLetter(context, actor, parcel, wanted, inLanguage)).letter
      return reply.redirect(letterPdfPath(made.id), 303)
    },
  )
}
