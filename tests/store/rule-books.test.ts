import { expect, test } from 'vitest'
import { inForce } from '../../src/rules/in-force.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { transact } from '../../src/store/database/transact.ts'
import { keepRuleBook, ruleBookByHash, ruleBookHash } from '../../src/store/rule-books.ts'
import { testApp } from '../support/app.ts'
import { COUNTY } from '../support/people.ts'
import { day } from '../support/quillback.ts'

const { services, people } = await testApp()
const { book, database } = services

test('the rules are kept once, whole, and answer as they did', async () => {
  const keep = () => transact(database, serviceIn(COUNTY), (tx) => keepRuleBook(tx, book, new Date()))
  const hashes = await Promise.all([keep(), keep(), keep()])
  expect(new Set(hashes)).toEqual(new Set([ruleBookHash(book)]))
  const kept = await transact(database, people.agent, (tx) => ruleBookByHash(tx, hashes[0]!))
  expect(ruleBookHash(kept!)).toBe(hashes[0])
  for (const on of ['1958-01-01', '1974-06-20', '1990-01-01', '2020-01-01']) {
    const ask = (it: typeof book) => inForce(it, 'quillback', 'tank.minimum-capacity', day(on))
    expect(ask(kept!)).toEqual(ask(book))
  }
})

test('only the service keeps rules', async () => {
  const other = { ...book, packs: new Map() }
  const keeping = transact(database, people.reviewer, (tx) => keepRuleBook(tx, other, new Date()))
  await expect(keeping).rejects.toThrow(/row-level security/)
})
