import { once } from 'node:events'
import net from 'node:net'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { runBounded } from '../../src/scan/bounded-child.ts'
import { childrenReachNetwork } from '../../src/scan/without-network.ts'

const SCRIPT = fileURLToPath(new URL('../support/calls-out.ts', import.meta.url))

test('what opens strangers’ files reaches nobody, or the service says at its start that it could', async () => {
  const server = net.createServer((socket) => socket.end())
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as net.AddressInfo
  let said: unknown
  const ending = await runBounded({
    script: SCRIPT,
    args: [String(port)],
    mayRead: [SCRIPT],
    memoryBytes: 256 * 1_048_576,
    firstMs: 10_000,
    signal: undefined,
    onMessage: (message) => {
      said = message
    },
  })
  server.close()
  expect(ending).toEqual({ how: 'finished' })
  expect(said).toEqual({ reached: await childrenReachNetwork() })
})
