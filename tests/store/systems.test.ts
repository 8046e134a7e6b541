import { expect, test } from 'vitest'
import { ownSystem } from '../../src/records/system.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { transact } from '../../src/store/database/transact.ts'
import {
  lockTogether,
  outOfTheOrdinary,
  systemById,
  systemsOf,
  writeSystem,
} from '../../src/store/systems.ts'
import { testApp } from '../support/app.ts'
import { newParcel } from '../support/quillback.ts'

const { services, people } = await testApp()
const { database, newId } = services
const [a, b, c] = [await newParcel(services), await newParcel(services), await newParcel(services)]
const on = ({ id, number }: { id: string; number: string }, serves = true) => ({
  parcel: id,
  number,
  serves,
  liesOn: true,
  bedrooms: null,
  designFlowGpd: null,
})
const { reviewer } = people
const made = { by: reviewer.account, at: new Date(), reason: 'Seen.' }
const shared = { ...ownSystem(a), use: 'main-house' as const, revision: 1, parcels: [on(a), on(b)] }

test('what nobody has said takes no row; what was said is read back, and whom it concerns', async () => {
  await transact(database, reviewer, async (tx) => {
    expect(await systemsOf(tx, 'quillback', a.id)).toEqual([ownSystem(a)])
    expect(await outOfTheOrdinary(tx, 'quillback', [a.id, b.id, c.id])).toEqual(new Set())
    await writeSystem(tx, 'quillback', shared, made)
    expect(await systemById(tx, 'quillback', a.id)).toEqual(shared)
    expect((await systemsOf(tx, 'quillback', b.id)).map(({ id }) => id)).toEqual([b.id, a.id])
    expect(await outOfTheOrdinary(tx, 'quillback', [a.id, b.id, c.id])).toEqual(new Set([a.id, b.id]))
  })
})

test('what hangs together is held together, from whichever parcel', async () => {
  await transact(database, reviewer, async (tx) => {
    const third = { ...ownSystem(b), id: newId(), parcel: b.id, revision: 1, parcels: [on(b), on(c, false)] }
    await writeSystem(tx, 'quillback', third, made)
    for (const { id } of [a, b, c]) {
      const { parcels, systems } = await lockTogether(tx, 'quillback', [id])
      expect(parcels).toEqual([a.id, b.id, c.id].sort())
      expect(systems.map((it) => it.id).sort()).toEqual([a.id, b.id, c.id, third.id].sort())
    }
  })
})

test('an agent and another county see no system; a firm changes none; history is never changed', async () => {
  await transact(database, people.agent, async (tx) => {
    expect(await tx.selectFrom('system').select('id').execute()).toEqual([])
    expect(await tx.selectFrom('system_parcel').select('parcel').execute()).toEqual([])
  })
  await transact(database, serviceIn('elsewhere'), async (tx) => {
    expect(await tx.selectFrom('system').select('id').execute()).toEqual([])
  })
  const asFirm = transact(database, people.firm, (tx) =>
    writeSystem(tx, 'quillback', { ...shared, revision: 2 }, made),
  )
  await expect(asFirm).rejects.toThrow(/row-level security/)
  await transact(database, people.firm, async (tx) => {
    expect(await tx.selectFrom('system').select('id').execute()).not.toEqual([])
    expect(await tx.selectFrom('system_change').select('reason').execute()).toEqual([])
  })
  const rewriting = transact(database, reviewer, (tx) =>
    tx.updateTable('system_change').set({ reason: 'Other.' }).execute(),
  )
  await expect(rewriting).rejects.toThrow()
})
