import { PDFParse } from 'pdf-parse'
import { describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import { newParcel } from '../../support/quillback.ts'

const { app, services, people, ask } = await testApp()
const parcel = await newParcel(services)
const here = '/counties/quillback'

type Asked = { readonly as?: keyof People; readonly wants?: string; readonly cookie?: string }
const get = (url: string, { as, wants = 'en-US', cookie }: Asked = {}) =>
  app.inject({
    url,
    headers: {
      accept: 'text/html',
      'accept-language': wants,
      ...(as ? { authorization: `Bearer ${people[as].token}` } : {}),
      ...(cookie ? { cookie } : {}),
    },
  })

describe('a page that is written in both languages', () => {
  test('comes in the one that the browser asks for, and says which it is', async () => {
    const spanish = await get('/sign-in', { wants: 'es-MX,es;q=0.9,en;q=0.8' })
    expect(spanish.body).toContain('<html lang="es">')
    expect(spanish.body).toContain('<h1>Iniciar sesión</h1>')
    expect(spanish.body).toContain('Ir al contenido principal')
    expect(spanish.headers.vary).toContain('accept-language')
    const english = await get('/sign-in')
    expect(english.body).toContain('<html lang="en">')
    expect(english.body).toContain('<h1>Sign in</h1>')
  })

  test('offers the other, and the choice is kept', async () => {
    expect((await get('/sign-in?to=%2Faccount')).body).toContain(
      'href="/sign-in?to=%2Faccount&amp;lang=es" lang="es" hreflang="es">Español</a>',
    )
    const chosen = await get('/sign-in?lang=es')
    expect(chosen.body).toContain('<html lang="es">')
    const [cookie] = String(chosen.headers['set-cookie']).split(';')
    expect(cookie).toBe('asfound_language=es')
    expect((await get('/letters', { cookie: cookie! })).body).toContain('<h1>Verificar una carta</h1>')
    expect((await get('/letters?lang=en', { cookie: cookie! })).body).toContain('<h1>Check a letter</h1>')
  })

  test('a language that nobody wrote is no choice', async () => {
    const answer = await get('/sign-in?lang=fr')
    expect(answer.headers['set-cookie']).toBeUndefined()
    expect(answer.body).toContain('<html lang="en">')
  })
})

describe('in Spanish', () => {
  const wants = 'es'

  test('a sign-in that fails says so', async () => {
    const answer = await app.inject({
      method: 'POST',
      url: '/sign-in',
      headers: {
        accept: 'text/html',
        'accept-language': 'es',
        'content-type': 'application/x-www-form-urlencoded',
        'sec-fetch-site': 'same-origin',
      },
      payload: 'name=nobody&password=nothing',
    })
    expect([answer.statusCode, answer.body]).toEqual([
      422,
      expect.stringContaining('El usuario o la contraseña no son correctos.'),
    ])
  })

  test('an agent reads a status, with its letters and notifications', async () => {
    const { body } = await get(`${here}/parcels/${parcel.number}?asked=x&by=address`, { as: 'agent', wants })
    expect(body).toContain('<html lang="es">')
    for (const words of [
      'Esta es la única dirección que coincide con «x».',
      'aria-label="Estado"',
      '<h2>Cartas</h2>',
      'Obtener: carta de estado',
      'Reciba avisos cuando cambie el estado',
      'No es una garantía del sistema séptico.',
      '>Cambios</a>',
    ]) {
      expect(body).toContain(words)
    }
    expect((await get(`${here}/changes`, { as: 'agent', wants })).body).toContain('Aún no hay cambios.')
  })

  test('a letter that is asked for there is a Spanish one', async () => {
    const { body } = await get(`${here}/parcels/${parcel.number}`, { as: 'agent', wants })
    const hidden = (name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(body)![1]!
    const made = await app.inject({
      method: 'POST',
      url: `${here}/parcels/${parcel.number}/letters`,
      headers: {
        authorization: `Bearer ${people.agent.token}`,
        'content-type': 'application/x-www-form-urlencoded',
      },
      payload: new URLSearchParams({
        kind: 'status',
        newest: hidden('newest'),
        language: hidden('language'),
      }).toString(),
    })
    expect(made.statusCode).toBe(303)
    const pdf = await app.inject({
      url: made.headers.location!,
      headers: { authorization: `Bearer ${people.agent.token}` },
    })
    const { text } = await new PDFParse({ data: pdf.rawPayload }).getText()
    expect(text).toContain('Carta de estado')
    expect(text).toContain('rige la carta en inglés')
  })

  test('anyone checks a letter', async () => {
    const url = `/v1${here}/parcels/${parcel.number}/letters`
    const { checkAddress, number } = (await ask('agent', { method: 'POST', url, body: { kind: 'status' } }))
      .body
    const { body } = await get(new URL(checkAddress).pathname, { wants })
    for (const words of ['Auténtica y vigente', `Carta ${number}`, 'Carta de estado', 'Datos al']) {
      expect(body).toContain(words)
    }
    expect((await get('/letters?code=abc', { wants })).body).toContain('Ningún código tiene el carácter B.')
  })

  test('a page that only reviewers read stays English, and says so', async () => {
    const { body } = await get(`${here}/queue`, { as: 'reviewer', wants })
    expect(body).toContain('<html lang="en">')
    expect(body).toContain('Skip to main content')
  })
})
