import { beforeAll, describe, expect, test } from 'vitest'
import { enrolCast } from '../../../src/cli/demonstration/enrol.ts'
import { loadStories } from '../../../src/cli/demonstration/load.ts'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { testApp } from '../../support/app.ts'

const { app, services, people } = await testApp()
const SLUGS = ['duplex-one-side-inspected', 'two-houses-on-one-field', 'field-on-the-next-lot']
beforeAll(async () => {
  const cast = await enrolCast(services.database)
  await loadStories(
    services,
    cast,
    readStories().filter(({ slug }) => SLUGS.includes(slug)),
  )
}, 120_000)

type Who = 'agent' | 'firm' | 'reviewer'
const here = '/counties/quillback/parcels'
const get = async (who: Who, url: string, language = 'en') => {
  const headers = { authorization: `Bearer ${people[who].token}`, 'accept-language': language }
  const answer = await app.inject({ url, headers })
  return { status: answer.statusCode, to: answer.headers.location, body: answer.body.replaceAll(/\s+/g, ' ') }
}
const send = async (url: string, fields: Record<string, string>) => {
  const answer = await app.inject({
    method: 'POST',
    url,
    headers: {
      authorization: `Bearer ${people.reviewer.token}`,
      'content-type': 'application/x-www-form-urlencoded',
    },
    payload: new URLSearchParams(fields).toString(),
  })
  return { status: answer.statusCode, body: answer.body.replaceAll(/\s+/g, ' ') }
}
const DUPLEX = '07-0490-0012'
/** The addresses of the systems that are not shown. */
const others = (body: string) => [...body.matchAll(/parcels\/([\d-]+~[0-9a-f]{6})"/g)].map(([, at]) => at!)

describe('a duplex of which one side was inspected', () => {
  test('is not inspected to an agent, who reads which side, in both languages', async () => {
    const { body } = await get('agent', `${here}/${DUPLEX}`)
    expect(body).toContain('The system of the dwelling unit B was not inspected.')
    expect(body).toContain('Dwelling unit A: Matches the record.')
    expect(body).not.toMatch(/74-0701|unit A</)
    expect((await get('agent', `${here}/${DUPLEX}`, 'es')).body).toContain(
      'No se inspeccionó el sistema de la vivienda B.',
    )
  })

  test('has a file for each side, found from the other', async () => {
    const first = await get('reviewer', `${here}/${DUPLEX}`)
    expect(first.body).toContain('74-0701')
    expect(first.body).not.toContain('75-0118')
    const [at] = others(first.body)
    const second = await get('reviewer', `${here}/${at}`)
    expect([second.status, second.body.includes('75-0118'), second.body.includes('74-0701')]).toEqual([
      200,
      true,
      false,
    ])
    expect((await get('reviewer', `${here}/${DUPLEX}~000000`)).status).toBe(404)
  })

  test('asks a firm which side it inspects, and each has a form and a brief of its own', async () => {
    const choice = await get('firm', `${here}/${DUPLEX}/inspection`)
    expect(choice.body).toContain('Which system?')
    const forms = [...choice.body.matchAll(/parcels\/([\d-]+~[0-9a-f]{6})\/inspection/g)].map(([, at]) => at!)
    expect(forms).toHaveLength(2)
    for (const at of forms) {
      const form = await get('firm', `${here}/${at}/inspection`)
      expect(form.body).toMatch(/12 Mill Race Rd, unit [AB]/)
      expect(form.body).toContain('Is there a second septic system on the lot?')
      expect((await get('firm', `${here}/${at}/brief`)).status).toBe(200)
    }
    expect((await get('firm', `${here}/${DUPLEX}/brief`)).status).toBe(303)
  })
})

describe('the page of a parcel’s systems', () => {
  const page = `${here}/07-0490-0020/systems`

  test('is for reviewers, and tells what each serves and how that is known', async () => {
    const { body } = await get('reviewer', page)
    expect(body).toContain('It serves 07-0490-0020 and 07-0490-0021 and lies on 07-0490-0020.')
    expect(body).toContain('The permit of 1976 joins the house on lot 21')
    expect((await get('firm', page)).status).toBe(404)
    expect((await get('agent', page)).status).toBe(404)
  })

  test('takes another system, and gives back what it can’t with the reasons', async () => {
    const entry = {
      id: '',
      use: 'laundry',
      label: 'laundry pit',
      'parcel-0': '07-0490-0020',
      'serves-0': 'yes',
      'lies-on-0': 'yes',
      'parcel-1': '07-0490-9999',
      'serves-1': 'yes',
    }
    const refused = await send(page, entry)
    expect(refused.status).toBe(422)
    expect(refused.body).toContain('How this is known')
    const astray = await send(page, { ...entry, reason: 'Shown by the owner.' })
    expect(astray.body).toContain('Parcel (07-0490-9999): there is no parcel 07-0490-9999 in this county.')
    expect(astray.body).toContain('value="laundry pit"')
    const { 'parcel-1': _, 'serves-1': __, ...right } = entry
    expect((await send(page, { ...right, reason: 'Shown by the owner.' })).status).toBe(303)
    expect((await get('reviewer', page)).body).toContain('Laundry pit')
    expect((await get('agent', `${here}/07-0490-0020`)).body).toContain(
      'The system of the laundry was not inspected.',
    )
  })
})

describe('a shared field, and one that lies on the next lot', () => {
  test('are told on each parcel with nothing of the other, and send to title work', async () => {
    const { body } = await get('agent', `${here}/07-0490-0021`)
    expect(body).toContain('It is shared')
    expect(body).toContain('title company')
    expect(body).not.toMatch(/07-0490-0020|20 Mill Race|74-0733/)
    const next = await get('agent', `${here}/07-0490-0032`)
    expect(next.body).toContain('It lies partly on this parcel and serves another one.')
    expect(next.body).not.toMatch(/07-0490-0031|31 Mill Race/)
    expect((await get('firm', `${here}/07-0490-0021`)).body).toContain(
      'It serves 07-0490-0020 and 07-0490-0021',
    )
  })
})
