import { mkdtemp, rm, stat } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { OutsideFailure } from '../../../../src/base/outside-failure.ts'
import { findBinaries } from '../../../../src/store/database/embedded/binaries.ts'
import { chooseRunAs } from '../../../../src/store/database/embedded/run-as.ts'

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-run-as-'))
afterAll(() => rm(folder, { recursive: true }))

test('the way that is chosen owns the folder it is to write in', async () => {
  const way = await chooseRunAs((await findBinaries()).postgres, folder)
  expect((await stat(folder)).uid).toBe(way.owner.uid)
})

test('when no way works, the person hears what was tried and what to do', async () => {
  const chosen = chooseRunAs('/no/such/program', folder)
  await expect(chosen).rejects.toBeInstanceOf(OutsideFailure)
  await expect(chosen).rejects.toThrow(/Tried: as .*no\/such\/program.*ASFOUND_DATA.*DATABASE_URL/s)
})
