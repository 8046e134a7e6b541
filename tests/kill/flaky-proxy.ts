import net, { type AddressInfo, type Socket } from 'node:net'

/**
 * Between the service and its database, in both directions. `cut`: connections are reset, new ones refused. `silent`:
 * nothing comes through, and what was sent arrives when it is fair again, as TCP sends again. `dead`: nothing comes
 * through, and the connections are reset when it is fair again, as by the server that took the place of a dead one.
 */
export type Weather = 'fair' | 'cut' | 'silent' | 'dead' | { readonly lateMs: number }

export type FlakyProxy = {
  /** The database's address by way of the proxy. */
  readonly url: string
  readonly set: (weather: Weather) => void
  /** Lets the address be another server's from now on; what is connected to the old one is reset. */
  readonly move: (databaseUrl: string) => void
  readonly close: () => Promise<void>
}

/** A proxy for a PostgreSQL that listens on a TCP port or on a Unix socket. */
export async function flakyProxy(databaseUrl: string): Promise<FlakyProxy> {
  let place = placeOf(databaseUrl)
  const pairs = new Set<readonly [Socket, Socket]>()
  let weather: Weather = 'fair'

  const server = net.createServer((near) => {
    near.on('error', () => {})
    if (weather === 'cut') return void near.resetAndDestroy()
    const far = net.connect(place)
    far.on('error', () => near.destroy())
    const pair = [near, far] as const
    pairs.add(pair)
    pass(near, far)
    pass(far, near)
    near.once('close', () => {
      pairs.delete(pair)
      far.destroy()
    })
  })
  const held: (() => void)[] = []
  function pass(from: Socket, into: Socket): void {
    from.on('data', (chunk) => {
      const write = () => void (into.writable && into.write(chunk))
      if (weather === 'silent' || weather === 'dead') held.push(write)
      else if (typeof weather === 'object') setTimeout(write, weather.lateMs)
      else write()
    })
    from.once('end', () => into.end())
  }

  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const url = new URL(databaseUrl)
  url.hostname = '127.0.0.1'
  url.port = String((server.address() as AddressInfo).port)
  url.searchParams.delete('host')
  url.searchParams.delete('port')
  return {
    url: url.href,
    set: (next) => {
      if (next === 'cut' || (weather === 'dead' && next !== 'dead'))
        for (const [near] of pairs) near.resetAndDestroy()
      weather = next
      for (const write of held.splice(0)) write()
    },
    move: (next) => {
      place = placeOf(next)
      for (const [near] of pairs) near.resetAndDestroy()
    },
    close: async () => {
      for (const [near, far] of pairs) {
        near.destroy()
        far.destroy()
      }
      await new Promise<void>((resolve) => server.close(() => resolve()))
    },
  }
}

function placeOf(databaseUrl: string): { path: string } | { host: string; port: number } {
  const to = new URL(databaseUrl)
  const folder = to.searchParams.get('host')
  return folder?.startsWith('/')
    ? { path: `${folder}/.s.PGSQL.${to.searchParams.get('port') ?? 5432}` }
    : { host: to.hostname, port: Number(to.port || 5432) }
}
