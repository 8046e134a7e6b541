import { describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'
import { jobRunner } from '../../support/run-jobs.ts'

const service = await testApp()
const { services, ask } = service
const runJobs = jobRunner(service)
const here = '/v1/counties/quillback'
const parcel = await newParcel(services, '07-0412-0031')
await newParcel(services, '07-0412-0032')

/** A multipart form with a file, as a browser or a program sends it. */
function form(kind: string, text: string, name = 'index.csv') {
  const edge = 'edge-of-a-part'
  const part = (head: string, body: string) =>
    `--${edge}\r\ncontent-disposition: form-data; ${head}\r\n\r\n${body}\r\n`
  return {
    method: 'POST' as const,
    url: `${here}/imports`,
    headers: { 'content-type': `multipart/form-data; boundary=${edge}` },
    payload: `${part('name="kind"', kind)}${part(`name="file"; filename="${name}"\r\ncontent-type: text/plain`, text)}--${edge}--\r\n`,
  }
}

async function take(kind: string, text: string, name?: string) {
  const { status, body } = await ask('reviewer', form(kind, text, name))
  expect([status, body.mappingFaults]).toEqual([201, []])
  return body
}
async function run(id: string, word: 'run' | 'trial' = 'run') {
  const started = await ask('reviewer', { method: 'POST', url: `${here}/imports/${id}/${word}` })
  expect(started.status).toBe(202)
  await runJobs()
  return (await ask('reviewer', { url: `${here}/imports/${id}` })).body
}
const rejections = async (id: string) =>
  (await ask('reviewer', { url: `${here}/imports/${id}/rejections` })).body.items
const permits = async () =>
  (await ask('reviewer', { url: `${here}/parcels/${parcel.number}` })).body.permits as {
    record: { number: string }
  }[]

const INDEX = `Parcel No,Permit Number,Type,Date Issued,Final Date,Beds,Tank Size (gal),Tank Material
7 412 31,74-118,New Install,5/3/74,6/20/74,3,1000,concrete
07-0412-0032,75-002,New Install,1975-02-01,1975-03-01,2,"1,000",concrete
07-0412-9999,75-003,New Install,1975-02-01,1975-03-01,2,750,concrete
07-0412-0031,96-041,Repair,1996-04-02,1996-13-19,,,
07-0412-0032,96-042,Repair,1996-04-02,1996-04-19,several,,granite
`

describe('an index of permits', () => {
  test('has its columns proposed by heading and sample', async () => {
    const { mapping, sample } = await take('permits', INDEX)
    expect(mapping.columns.map((it: { to: string; unit: string }) => [it.to, it.unit])).toEqual([
      ['parcel', null],
      ['number', null],
      ['kind', null],
      ['issuedOn', null],
      ['approvedOn', null],
      ['bedrooms', null],
      ['components.tank.capacity', 'gal'],
      ['components.tank.material', null],
    ])
    expect(mapping.columns[2].values).toEqual({ 'New Install': 'new', Repair: 'repair' })
    expect(sample[0][0]).toBe('7 412 31')
  })

  test('tried, says what would become of each row and writes nothing', async () => {
    const { id } = await take('permits', INDEX)
    const tried = await run(id, 'trial')
    expect([tried.state, tried.rows]).toEqual([
      'tried',
      { read: 5, added: 2, changed: 0, unchanged: 0, rejected: 3 },
    ])
    expect(await permits()).toEqual([])
    expect(await rejections(id)).toHaveLength(3)
  })

  test('takes good rows, and tells each bad one by line, column, what it had and what it wants', async () => {
    const { id } = await take('permits', INDEX)
    const done = await run(id)
    expect([done.state, done.rows]).toEqual([
      'done',
      { read: 5, added: 2, changed: 0, unchanged: 0, rejected: 3 },
    ])
    expect((await permits()).map(({ record }) => record.number)).toEqual(['74-118'])
    const [stranger, date, two] = await rejections(id)
    expect(stranger).toMatchObject({ line: 4, faults: [{ column: 'Parcel No', had: '07-0412-9999' }] })
    expect(stranger.faults[0].wants).toMatch(/no parcel 07-0412-9999/)
    expect(date).toMatchObject({ line: 5, faults: [{ column: 'Final Date', had: '1996-13-19' }] })
    expect(two.line).toBe(6)
    expect(two.faults.map((it: { column: string; had: string }) => [it.column, it.had])).toEqual([
      ['Beds', 'several'],
      ['Tank Material', 'granite'],
    ])
  })

  test('reconciles the parcels that it touched', async () => {
    const { word } = (await ask('agent', { url: `${here}/parcels/${parcel.number}/status` })).body.status
    expect(word).toBe('not-inspected')
    const [rerun] = (await ask('reviewer', { url: `${here}/reruns` })).body.items
    const { state, parcels } = (await ask('reviewer', { url: `${here}/reruns/${rerun.id}` })).body
    expect([state, parcels.waiting, parcels.failed]).toEqual(['done', 0, 0])
  })

  test('sent a second time changes nothing', async () => {
    const { id } = await take('permits', INDEX)
    expect((await run(id)).rows).toEqual({ read: 5, added: 0, changed: 0, unchanged: 2, rejected: 3 })
    expect(await permits()).toHaveLength(1)
  })

  test('gives rejected rows back, which mended and sent again are taken', async () => {
    const { id } = await take('permits', INDEX)
    await run(id)
    const { headers, body } = await ask('reviewer', { url: `${here}/imports/${id}/rejected` })
    expect(headers['content-type']).toMatch(/^text\/csv/)
    expect(body.split('\r\n')[0]).toBe(
      'Parcel No,Permit Number,Type,Date Issued,Final Date,Beds,Tank Size (gal),Tank Material,line,to fix',
    )
    const mended = String(body)
      .replace('07-0412-9999', '07-0412-0032')
      .replace('1996-13-19', '1996-04-19')
      .replace('several', '3')
      .replace('granite,', 'concrete,')
    const again = await take('permits', mended)
    expect((await run(again.id)).rows).toMatchObject({ added: 3, rejected: 0 })
  })

  test('that says something else of a permit on file is told so, and changes nothing', async () => {
    const { id } = await take(
      'permits',
      INDEX.split('\n').slice(0, 2).join('\n').replace(',3,1000', ',4,1000'),
    )
    expect((await run(id)).rows).toMatchObject({ added: 0, unchanged: 0, rejected: 1 })
    expect((await rejections(id))[0].faults[0]).toMatchObject({ column: 'Permit Number', had: '74-118' })
  })
})

test('a mapping that a person mended is what the next file with those headings begins with', async () => {
  const text = 'Ref,Where,What\n80-001,07-0412-0031,INST\n'
  const { body } = await ask('reviewer', form('permits', text))
  expect(body.mapping.columns.map(({ to }: { to: string }) => to)).toEqual([null, 'parcel', null])
  expect(body.mappingFaults).toEqual([{ pointer: '/columns', message: 'no column fills number' }])
  const refused = await ask('reviewer', { method: 'POST', url: `${here}/imports/${body.id}/run` })
  expect(refused.status).toBe(422)
  const mapping = {
    columns: [
      { column: 'Ref', to: 'number' },
      { column: 'Where', to: 'parcel' },
      { column: 'What', to: 'kind', values: { INST: 'new' } },
    ],
  }
  const put = (version: string, columns: object) =>
    ask('reviewer', {
      method: 'PUT',
      url: `${here}/imports/${body.id}/mapping`,
      headers: { 'if-match': version },
      body: columns,
    })
  expect((await put('"r9"', mapping)).status).toBe(412)
  const wrong = await put('"r1"', { columns: [{ column: 'Ref', to: 'color' }] })
  expect([wrong.status, wrong.body.errors[0].pointer]).toEqual([422, '/columns/0/to'])
  expect((await put('"r1"', mapping)).status).toBe(200)
  const next = await take('permits', text.replace('80-001', '80-002'))
  expect(next.mapping.columns[2]).toEqual({ column: 'What', to: 'kind', unit: null, values: { INST: 'new' } })
  expect((await run(next.id)).rows).toMatchObject({ added: 1 })
})

test('the open permit fields (BLDS) are known by their names', async () => {
  // Required and recommended fields of the Building and Land Development Specification, as its wiki page of 2016 has them.
  const text =
    'PermitNum,Description,AppliedDate,IssuedDate,CompletedDate,StatusCurrent,OriginalAddress1,OriginalAddress2,OriginalCity,OriginalState,OriginalZip,WorkClass\n' +
    `B-1,septic system,1990-01-02,1990-02-03,1990-05-06,Finaled,${parcel.address},,Quillback,,,New\n`
  const taken = await take('permits', text)
  expect(
    taken.mapping.columns.flatMap(({ column, to }: { column: string; to: string }) =>
      to ? [[column, to]] : [],
    ),
  ).toEqual([
    ['PermitNum', 'number'],
    ['Description', 'remarks'],
    ['IssuedDate', 'issuedOn'],
    ['CompletedDate', 'approvedOn'],
    ['OriginalAddress1', 'address'],
    ['WorkClass', 'kind'],
  ])
  expect((await run(taken.id)).rows).toMatchObject({ added: 1, rejected: 0 })
})

describe('parcels', () => {
  const LIST = `Parcel,Address,Old Numbers,Split From,Effective Date
08-0001-0001,1 Tern Lane,A-17; A-18,,1990-01-01
08-0001-0002,2 Tern Lane,,08-0001-0001,2001-05-01
8-1-3,3 Tern Lane,,,
`
  test('come with old numbers and splits; a parent is retired and goes on being found', async () => {
    const { id } = await take('parcels', LIST)
    expect((await run(id)).rows).toMatchObject({ added: 3, rejected: 0 })
    const found = async (q: string) =>
      (await ask('agent', { url: `${here}/parcels?q=${encodeURIComponent(q)}` })).body.items.map(
        (it: { number: string }) => it.number,
      )
    expect(await found('A 17')).toEqual(['08-0001-0001'])
    expect(await found('08-0001-0003')).toEqual(['08-0001-0003'])
    const parent = (await ask('reviewer', { url: `${here}/parcels/08-0001-0001` })).body
    expect(parent.retiredOn).toBe('2001-05-01')
    const again = await take('parcels', LIST)
    expect((await run(again.id)).rows).toEqual({ read: 3, added: 0, changed: 0, unchanged: 3, rejected: 0 })
  })

  test('a new address is a change; a split without a day is told', async () => {
    const { id } = await take(
      'parcels',
      'Parcel,Address,Split From\n08-0001-0002,22 Tern Lane,\n08-0001-0009,,08-0001-0003\n',
    )
    expect((await run(id)).rows).toMatchObject({ added: 0, changed: 1, rejected: 1 })
    expect((await rejections(id))[0].faults[0].wants).toMatch(/day of the split/)
  })
})

describe('findings', () => {
  const INSPECTIONS = `PIN,Firm,Inspection Date,Bedrooms Counted,components.tank.length,components.tank.width,components.tank.liquidDepth,Notes
07-0412-0031,heron inspections,2026-10-12,3,6'-0",4'-0",4'-0",lid sound
07-0412-0031,Nobody & Sons,2026-10-13,3,,,,
`
  test('land as submitted, in the name of the firm that made them', async () => {
    const { id } = await take('findings', INSPECTIONS)
    expect((await run(id)).rows).toMatchObject({ added: 1, rejected: 1 })
    expect((await rejections(id))[0].faults[0]).toMatchObject({ column: 'Firm', had: 'Nobody & Sons' })
    const queue = (await ask('firm', { url: `${here}/discrepancies?kind=capacity-below-record` })).body.items
    expect(queue).toHaveLength(1)
    expect((await ask('rival', { url: `${here}/discrepancies` })).body.items).toEqual([])
    const again = await take('findings', INSPECTIONS)
    expect((await run(again.id)).rows).toMatchObject({ added: 0, unchanged: 1, rejected: 1 })
  })
})

test('newline-delimited JSON: whole entries, and a line that is none', async () => {
  const entry = {
    number: '99-001',
    kind: 'new',
    approvedOn: '1999-05-01',
    components: [{ tag: 'tank', kind: 'tank', capacity: '1,250 gal' }],
  }
  const text = `${JSON.stringify({ parcel: '07-0412-0032', entry })}\n{"parcel": \n${JSON.stringify({ parcel: '07-0412-0032', entry: { ...entry, number: '99-002', bedrooms: 'x' } })}\n`
  const { body } = await ask('reviewer', form('permits', text, 'index.ndjson'))
  expect([body.format, body.mappingFaults]).toEqual(['ndjson', []])
  expect((await run(body.id)).rows).toMatchObject({ added: 1, rejected: 2 })
  const faults = await rejections(body.id)
  expect(faults.map((it: { line: number }) => it.line)).toEqual([2, 3])
  expect(faults[1].faults[0]).toMatchObject({ column: '/bedrooms' })
})

describe('files that are none', () => {
  test.each([
    ['', 'is empty'],
    ['a,,b\n1,2,3\n', 'no heading for column 2'],
    ['a,a\n1,2\n', 'two columns headed'],
  ])('%j', async (text, says) => {
    const { status, body } = await ask('reviewer', form('permits', text))
    expect([status, body.errors[0].pointer]).toEqual([422, '/file'])
    expect(body.errors[0].message).toContain(says)
  })

  test('a quotation mark that never closes spoils its row and no other', async () => {
    const good = '07-0412-0031,10-00X,new,2010-01-01'
    const text = `parcel,number,kind,issuedOn\n${good.replace('X', '1')}\n07-0412-0031,"10-0"02,new,2010-01-01\n${good.replace('X', '3')}\n`
    const { id } = await take('permits', text)
    expect((await run(id)).rows).toMatchObject({ added: 3 })
  })
})

test('only reviewers import', async () => {
  for (const who of ['firm', 'agent'] as const)
    expect((await ask(who, form('permits', INDEX))).status).toBe(403)
  expect((await ask('stranger', { url: `${here}/imports` })).status).toBe(404)
})

describe('a parcel with several systems', () => {
  test('has a row that names none rejected with their names, and takes one that does, and re-runs both', async () => {
    const duplex = await newParcel(services)
    const said = await ask('reviewer', {
      method: 'POST',
      url: `${here}/parcels/${duplex.number}/systems`,
      body: { use: 'cottage', label: 'Unit B', parcels: [{ parcel: duplex.number }], reason: 'Two permits.' },
    })
    const { id: unit } = said.body.system
    const row = (number: string, system: string) =>
      `${duplex.number},${number},new,1975-02-01,1975-03-01,2,"1,000",${system}\n`
    const { id } = await take(
      'permits',
      `Parcel No,Permit Number,Type,Date Issued,Final Date,Beds,Tank Size (gal),System\n${row('75-701', '')}${row('75-702', 'unit b')}${row('75-703', 'main system')}${row('75-704', 'barn')}`,
    )
    expect((await run(id)).rows).toEqual({ read: 4, added: 2, changed: 0, unchanged: 0, rejected: 2 })
    const wants = (await rejections(id)).map((it: { faults: { wants: string }[] }) => it.faults[0]!.wants)
    expect(wants).toEqual(Array(2).fill('this parcel has 2 systems. Write one of: main system, Unit B'))
    const filed = async (system: string) =>
      (await ask('reviewer', { url: `${here}/parcels/${duplex.number}?system=${system}` })).body.permits.map(
        (it: { record: { number: string } }) => it.record.number,
      )
    expect([await filed(duplex.id), await filed(unit)]).toEqual([['75-703'], ['75-702']])
    const { systems } = (await ask('agent', { url: `${here}/parcels/${duplex.number}/status` })).body.status
    expect(systems.map((it: { word: string }) => it.word)).toEqual(['not-inspected', 'not-inspected'])
    const csv = (await ask('reviewer', { url: `${here}/exports/permits.csv` })).body as string
    expect(csv).toContain(`${unit},Unit B,75-702`)
  })
})

test('an index that is read again brings back no permit that was voided, merged or moved away', async () => {
  await newParcel(services, '07-0412-0041')
  await newParcel(services, '07-0412-0042')
  const text = `Parcel No,Permit Number,Type,Date Issued,Final Date
07-0412-0041,81-001,New Install,1981-02-01,1981-03-01
07-0412-0041,82-002,Repair,1982-02-01,1982-03-01
`
  const first = await take('permits', text)
  expect((await run(first.id)).rows).toMatchObject({ added: 2 })
  const filed = async (number: string) =>
    (await ask('reviewer', { url: `${here}/parcels/${number}` })).body.permits as { id: string }[]
  const [moved, voided] = await filed('07-0412-0041')
  const change = (id: string, body: object) =>
    ask('reviewer', {
      method: 'POST',
      url: `${here}/permits/${id}/filing-changes`,
      headers: { 'if-match': '*' },
      body,
    })
  const move = { act: 'move', toParcel: '07-0412-0042', reason: 'filed-in-wrong-folder' }
  expect((await change(moved!.id, move)).status).toBe(201)
  expect((await change(voided!.id, { act: 'void', reason: 'canceled' })).status).toBe(201)
  const again = await take('permits', text)
  expect((await run(again.id)).rows).toMatchObject({ added: 0, unchanged: 2, rejected: 0 })
  expect(await filed('07-0412-0041')).toEqual([])
  expect(await filed('07-0412-0042')).toHaveLength(1)
})
