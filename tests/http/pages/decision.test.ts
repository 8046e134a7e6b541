import { beforeEach, describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { type DecisionAsked, decide } from '../../../src/operations/discrepancies/decide.ts'
import { readDiscrepancy } from '../../../src/operations/discrepancies/read-discrepancy.ts'
import { draftFindings } from '../../../src/operations/findings/draft-findings.ts'
import { submitFindings } from '../../../src/operations/findings/submit-findings.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { testApp } from '../../support/app.ts'
import {
  findingsRecord,
  inspectionThatDiffers,
  newParcel,
  permit1974,
  permitRecord,
} from '../../support/quillback.ts'

const { app, services: context, people } = await testApp()
const { reviewer, firm } = people

let permit: string
let tank: string

/** A parcel whose tank measures smaller than its record. */
beforeEach(async () => {
  const parcel = await newParcel(context)
  permit = must(await enterPermit(context, reviewer, parcel.id, permitRecord(permit1974))).permit.id
  const draft = must(await draftFindings(context, firm, parcel.id, findingsRecord(inspectionThatDiffers)))
  const { changes } = must(await submitFindings(context, firm, draft.id, undefined)).reconciled
  tank = changes.find(({ body }) => body.kind === 'capacity-below-record')!.discrepancy
})

const send = (fields: Record<string, string>, who: keyof typeof people = 'reviewer') =>
  app.inject({
    method: 'POST',
    url: `/counties/quillback/discrepancies/${tank}/decisions`,
    headers: {
      authorization: `Bearer ${people[who].token}`,
      accept: 'text/html',
      'content-type': 'application/x-www-form-urlencoded',
    },
    payload: new URLSearchParams(fields).toString(),
  })
const now = async () => must(await readDiscrepancy(context, reviewer, tank))
const meanwhile = async (over: Partial<DecisionAsked>) =>
  must(
    await decide(context, reviewer, {
      discrepancy: tank,
      version: undefined,
      action: 'accept',
      reason: 'Someone else’s.',
      asks: null,
      correction: null,
      supersedes: null,
      ...over,
    }),
  )
const good = { version: '1', action: 'accept', reason: 'The card rounded up.' }

describe('a form that is right', () => {
  test('decides, and leads back to its line', async () => {
    const answer = await send(good)
    expect(answer.statusCode).toBe(303)
    expect(answer.headers.location).toMatch(
      new RegExp(`^/counties/quillback/parcels/07-0412-\\d{4}\\?done=${tank}#d-${tank}$`),
    )
    expect((await now()).decisions).toMatchObject([{ action: 'accept', reason: 'The card rounded up.' }])
  })

  test('sent twice decides once, and both presses lead to the same place', async () => {
    const [first, second] = [await send(good), await send(good)]
    expect([first.statusCode, second.statusCode]).toEqual([303, 303])
    expect(second.headers.location).toBe(first.headers.location)
    expect((await now()).decisions).toHaveLength(1)
  })

  test('corrects the record with a value as people write it', async () => {
    const correction = { permit, component: `${permit}/tank`, field: 'capacity', value: '720 gal' }
    const answer = await send({ ...good, action: 'correct-record', ...correction })
    expect(answer.statusCode).toBe(303)
    expect((await now()).discrepancy.state).toBe('vanished')
  })

  test('replaces a decision knowingly; the earlier one stays', async () => {
    await send(good)
    const standing = await now()
    const { statusCode } = await send({
      version: String(standing.discrepancy.revision),
      supersedes: standing.discrepancy.decision!,
      action: 'require-permit',
      reason: 'On second thought.',
    })
    expect(statusCode).toBe(303)
    const { decisions } = await now()
    expect(decisions.map(({ action }) => action)).toEqual(['accept', 'require-permit'])
    expect(decisions[0]?.supersededBy).toBe(decisions[1]?.id)
  })
})

describe('a form that is not', () => {
  test('comes back whole, with each fault beside its field', async () => {
    const typed = { permit, component: `${permit}/tank`, field: 'capacity', value: '7 bananas' }
    const answer = await send({
      version: '1',
      action: 'correct-record',
      reason: '  ',
      asks: 'kept',
      ...typed,
    })
    expect(answer.statusCode).toBe(422)
    expect(answer.body).toContain('value="7 bananas"')
    expect(answer.body).toContain('value="kept"')
    expect(answer.body).toMatch(/<input type="radio" name="action" value="correct-record" checked>/)
    expect(answer.body).toContain(`id="fault-value-${tank}"`)
    expect(answer.body).toContain(`id="fault-reason-${tank}"`)
    expect(answer.body).toContain(`aria-describedby="fault-value-${tank}"`)
    expect((await now()).decisions).toEqual([])
  })

  test('without a choice says so, and not in the words of a program', async () => {
    const { body, statusCode } = await send({ version: '1', action: '', reason: 'Because.' })
    expect(statusCode).toBe(422)
    expect(body).toContain('Choose a decision.')
    expect(body).toContain('>Because.</textarea>')
    expect(body).not.toMatch(/correct-record, accept/)
  })

  test('and what was typed is text, whatever it looks like', async () => {
    const { body } = await send({ version: '1', action: '', reason: '</textarea><script>alert(1)</script>' })
    expect(body).toContain('&lt;/textarea&gt;&lt;script&gt;alert(1)&lt;/script&gt;')
    expect(body).not.toContain('<script>alert')
  })
})

describe('meanwhile', () => {
  test('it changed: shown, not written over, and the form can be sent again as it is', async () => {
    await meanwhile({ action: 'require-permit' })
    const answer = await send(good)
    expect(answer.statusCode).toBe(412)
    expect(answer.body).toContain('Someone else decided this while you had it open')
    expect(answer.body).toContain('Someone else’s.')
    expect(answer.body).toContain('>The card rounded up.</textarea>')
    const { discrepancy, decisions } = await now()
    expect(decisions).toHaveLength(1)
    expect(answer.body).toContain(`name="version" value="${discrepancy.revision}"`)
    expect(answer.body).toContain(`name="supersedes" value="${discrepancy.decision}"`)
  })

  test('someone replaced the decision that was to be replaced', async () => {
    const first = (await meanwhile({})).decision.id
    await meanwhile({ action: 'require-repair', supersedes: first })
    const { discrepancy } = await now()
    const answer = await send({ ...good, version: String(discrepancy.revision), supersedes: first })
    expect(answer.statusCode).toBe(409)
    expect((await now()).decisions).toHaveLength(2)
  })
})

describe('who may not', () => {
  test.each(['firm', 'rival', 'agent'] as const)('%s is told in words', async (who) => {
    const answer = await send(good, who)
    expect([answer.statusCode, answer.headers['content-type']]).toEqual([403, 'text/html; charset=utf-8'])
    expect(answer.body).toContain('Your account cannot do this')
    expect((await now()).decisions).toEqual([])
  })

  test('another county’s reviewer finds nothing', async () => {
    expect((await send(good, 'stranger')).statusCode).toBe(404)
  })
})

test('a form without the version it was made from decides nothing', async () => {
  const { version: _, ...rest } = good
  expect((await send(rest)).statusCode).toBe(428)
  expect((await send({ ...rest, version: 'x' })).statusCode).toBe(428)
  expect((await now()).decisions).toEqual([])
})
