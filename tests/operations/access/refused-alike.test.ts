import { expect, test } from 'vitest'
import { setPassword } from '../../../src/operations/access/set-password.ts'
import { signIn } from '../../../src/operations/access/sign-in.ts'
import { testApp } from '../../support/app.ts'

const { services, people } = await testApp()
await setPassword(services.database, {
  account: people.reviewer.account,
  name: 'r.known',
  password: 'pelican-thistle-4-anvil',
})

test('a name that there is and one that there is not are refused alike, and after the same time', async () => {
  const took = { known: [] as number[], unknown: [] as number[] }
  for (let round = 0; round < 4; round++) {
    for (const which of ['known', 'unknown'] as const) {
      const name = which === 'known' ? 'r.known' : `u.nobody${round}`
      const asked = { name, password: 'not this one at all', address: `192.0.2.${round}`, browser: null }
      const from = performance.now()
      expect(await signIn(services, asked)).toEqual({ ok: false, error: { why: 'wrong' } })
      took[which].push(performance.now() - from)
    }
  }
  // Each ends at a step of a tenth of a second after the name was looked up, and the steps are the same ones.
  const least = (all: readonly number[]) => Math.min(...all)
  expect(Math.abs(least(took.known) - least(took.unknown))).toBeLessThan(25)
})
