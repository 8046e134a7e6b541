import type { FastifyReply, FastifyRequest } from 'fastify'
import { isLanguage, type Language, pickLanguage } from '../../words/language.ts'
import { readCookie, setCookie } from '../access/cookie.ts'

const CHOSEN = { name: 'asfound_language', path: '/' } as const
const YEAR_MS = 31_557_600_000

const addressOf = ({ url }: FastifyRequest): URL => new URL(url, 'http://here.invalid')

/** Read from the address itself: the query that a route has was checked by its schema, which leaves out the rest. */
function inAddress(request: FastifyRequest): Language | undefined {
  const asked = addressOf(request).searchParams.get('lang') ?? ''
  return isLanguage(asked) ? asked : undefined
}

/** The language of a page: chosen by its link just now, chosen before, or asked for by the browser. */
export const languageOf = (request: FastifyRequest): Language =>
  pickLanguage(request.headers['accept-language'], inAddress(request) ?? readCookie(request, CHOSEN))

/** A choice holds for a year, signed in or not. */
export async function rememberLanguage(request: FastifyRequest, reply: FastifyReply): Promise<void> {
  const chosen = inAddress(request)
  if (chosen === undefined) return
  setCookie(request, reply, CHOSEN, chosen, new Date(request.context.clock().getTime() + YEAR_MS))
}

export type LanguageLink = { readonly language: Language; readonly to: string }

/** This page in the other languages; none where the page is the answer to a form, which can't be asked for again. */
export function otherLanguages(request: FastifyRequest, now: Language): readonly LanguageLink[] {
  if (request.method !== 'GET') return []
  const { pathname, searchParams } = addressOf(request)
  const others: readonly Language[] = now === 'en' ? ['es'] : ['en']
  return others.map((language) => {
    searchParams.set('lang', language)
    return { language, to: `${pathname}?${searchParams}` }
  })
}
