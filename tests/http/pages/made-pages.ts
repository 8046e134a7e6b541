import { readFile } from 'node:fs/promises'
import { expect } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { taughtExample } from '../../../src/http/api/forms/shapes.ts'
import { bringForm } from '../../../src/operations/forms/change-form.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import type { LivedCounty, Who } from '../../support/lived-county.ts'
import { newParcel, permit1974, permitRecord } from '../../support/quillback.ts'

/** Pages that are only there once something was made: an import, a trial of rules, a letter, an address to tell. */
export async function makePages({ app, tokens, cast, services }: LivedCounty) {
  const post = (who: Who, url: string, fields: Readonly<Record<string, string>>) =>
    app.inject({
      method: 'POST',
      url,
      headers: {
        accept: 'text/html',
        authorization: `Bearer ${tokens[who]}`,
        'content-type': 'application/x-www-form-urlencoded',
      },
      payload: new URLSearchParams(fields).toString(),
    })
  const at = '/counties/quillback'
  const edge = 'edge-of-a-part'
  const part = (head: string, body: string) =>
    `--${edge}\r\ncontent-disposition: form-data; ${head}\r\n\r\n${body}\r\n`
  const sent = await app.inject({
    method: 'POST',
    url: `${at}/imports`,
    headers: {
      accept: 'text/html',
      authorization: `Bearer ${tokens.reviewer}`,
      'content-type': `multipart/form-data; boundary=${edge}`,
    },
    payload: `${part('name="kind"', 'permits')}${part('name="file"; filename="index.csv"', 'Ref,Where,What\n80-001,07-0412-0031,INST\n')}--${edge}--\r\n`,
  })
  const yaml = await readFile(
    new URL('../../../src/rules/packs/public-health-service/tanks.yaml', import.meta.url),
    'utf8',
  )
  const trial = await post('reviewer', `${at}/rules/trial`, { yaml })
  const letter = await post('agent', `${at}/parcels/07-0462-0026/letters`, { kind: 'status' })
  const told = { address: 'https://93.184.216.34/hook' }
  await post('agent', `${at}/parcels/07-0462-0026/subscriptions`, told)
  const watched = await newParcel(services, '07-0499-0001')
  await post('agent', `${at}/parcels/${watched.number}/subscriptions`, { here: 'yes' })
  must(await enterPermit(services, cast.reviewer, watched.number, permitRecord(permit1974)))
  const { body } = await app.inject({
    url: `${at}/parcels/07-0446-0027`,
    headers: { accept: 'text/html', authorization: `Bearer ${tokens.reviewer}` },
  })
  const { body: file } = await app.inject({
    url: `${at}/parcels/07-0462-0026`,
    headers: { accept: 'text/html', authorization: `Bearer ${tokens.agent}` },
  })
  const form = must(await bringForm(services, cast.reviewer, { name: 'A form', taught: taughtExample }))
  expect([sent.statusCode, trial.statusCode, letter.statusCode]).toEqual([303, 303, 303])
  return {
    anImport: String(sent.headers.location),
    aForm: `${at}/forms/${form.id}`,
    aTrial: String(trial.headers.location),
    asItWas: body.match(/\/counties\/quillback\/reconciliations\/[\w-]+/)![0],
    aLetter: file.match(/\/letters\/[\w-]+/g)!.find((it) => !it.endsWith('.pdf'))!,
  }
}
