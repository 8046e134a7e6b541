import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { openServerFolder } from '../../../../src/store/database/embedded/folder.ts'
import { takeLease } from '../../../../src/store/database/embedded/lease.ts'

const data = await mkdtemp(path.join(os.tmpdir(), 'asfound-lease-'))
afterAll(() => rm(data, { recursive: true }))
const folder = openServerFolder(data)

test('a folder in use from elsewhere is refused, with who has it; one given back is free at once', async () => {
  const first = await takeLease(folder, 'barn pid:1')
  await expect(takeLease(folder, 'house pid:2')).rejects.toThrow(
    /in use from another container or machine \(barn\)/,
  )
  first.giveBack()
  const second = await takeLease(folder, 'house pid:2')
  second.giveBack()
})

test('the same place takes its own lease again without waiting, as after a kill', async () => {
  await takeLease(folder, 'barn pid:1')
  const started = Date.now()
  const again = await takeLease(folder, 'barn pid:1')
  expect(Date.now() - started).toBeLessThan(1_000)
  again.giveBack()
})
