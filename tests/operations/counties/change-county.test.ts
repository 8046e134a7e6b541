import { expect, test } from 'vitest'
import { changeCounty } from '../../../src/operations/counties/change-county.ts'
import { unseenPage } from '../../forms/unseen/families.ts'
import { testApp } from '../../support/app.ts'
import { jobRunner } from '../../support/run-jobs.ts'
import { uploading } from '../../support/upload.ts'

const service = await testApp()
const { services, ask } = service
const here = '/v1/counties/quillback'
const change = (asked: Omit<Parameters<typeof changeCounty>[1], 'county'>) =>
  changeCounty(services.database, { county: 'quillback', ...asked })

test('a county’s ways of writing parcel numbers are told by examples, and every way of asking for one knows them', async () => {
  expect(await change({ parcelExamples: ['07-0412-0031', 'R-114-22A'] })).toEqual({ ok: true, value: null })
  const { parcelNumbers, keepsNames } = (await ask('reviewer', { url: here })).body
  expect(parcelNumbers).toEqual({
    groups: [2, 4, 4],
    separator: '-',
    example: '07-0412-0031',
    others: [{ groups: [1, 3, 3], letters: [0, 2], separator: '-', example: 'R-114-22A' }],
  })
  expect(keepsNames).toBe(false)
})

test('what is no example, or no county, is refused', async () => {
  expect(await change({ parcelExamples: ['none?'] })).toMatchObject({ ok: false })
  expect(await changeCounty(services.database, { county: 'nowhere', keepsNames: true })).toEqual({
    ok: false,
    error: 'There is no county nowhere.',
  })
})

test('names of owners and installers are left out of what is read, unless the county keeps them', async () => {
  const runJobs = jobRunner(service)
  const { pdf, papers } = await unseenPage('repair-1988', 71)
  const { installer } = papers[0]!.truth.noise
  const textOf = async (name: string) => {
    // The same bytes once more are the same document: a comment behind them makes them another.
    const file = { bytes: Buffer.concat([pdf, Buffer.from(`\n%${name}\n`)]), name: `${name}.pdf` }
    const { document } = (await ask('reviewer', await uploading(`${here}/documents`, { file }))).body
    await runJobs()
    const { items } = (await ask('reviewer', { url: `${here}/documents/${document.id}/text` })).body
    return JSON.stringify(items)
  }
  const without = await textOf('one')
  expect(without).toContain('REPAIR INSPECTION')
  expect(without).not.toContain(installer)
  await change({ keepsNames: true })
  expect(await textOf('two')).toContain(installer)
})
