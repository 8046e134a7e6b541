import { createHash, randomBytes } from 'node:crypto'
import { mkdtemp, readdir, readFile, rm, stat } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { Readable } from 'node:stream'
import { text } from 'node:stream/consumers'
import { afterAll, describe, expect, test } from 'vitest'
import { openOriginals } from '../../src/files/originals.ts'

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-originals-'))
afterAll(() => rm(folder, { recursive: true }))
const originals = await openOriginals(folder)
const drafts = () => readdir(path.join(folder, 'drafts'))
const stored = async () =>
  (await readdir(folder, { recursive: true })).filter((name) => /[0-9a-f]{64}$/.test(name))

// SHA-256 of "abc": NIST FIPS 180-2, appendix B.1.
const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'

describe('an original', () => {
  test('is known by the SHA-256 of its bytes and comes back as it was', async () => {
    expect(await originals.keep(Readable.from([Buffer.from('a'), Buffer.from('bc')]))).toEqual({
      hash: ABC,
      bytes: 3,
    })
    expect(await text((await originals.read(ABC))!)).toBe('abc')
    expect(await readFile((await originals.pathOf(ABC))!, 'utf8')).toBe('abc')
  })

  test('is kept once however often it comes, and can’t be written to', async () => {
    await Promise.all([1, 2, 3].map(() => originals.keep(Readable.from([Buffer.from('abc')]))))
    expect(await stored()).toHaveLength(1)
    expect(await drafts()).toEqual([])
    expect((await stat((await originals.pathOf(ABC))!)).mode & 0o777).toBe(0o400)
  })

  test('of many megabytes goes through', async () => {
    const bytes = randomBytes(5_000_000)
    const kept = await originals.keep(Readable.from([bytes.subarray(0, 1_000), bytes.subarray(1_000)]))
    expect(kept).toEqual({ hash: createHash('sha256').update(bytes).digest('hex'), bytes: bytes.length })
  })

  test('that was never kept is not there', async () => {
    expect(await originals.read('0'.repeat(64))).toBeUndefined()
    expect(await originals.pathOf('0'.repeat(64))).toBeUndefined()
  })

  test('can’t be asked for by anything but a hash', async () => {
    await expect(originals.read('../../../etc/passwd')).rejects.toThrow('not the hash of an original')
  })
})

describe('nothing is left', () => {
  test('of a stream that breaks', async () => {
    const before = await stored()
    const broken = Readable.from(
      (async function* () {
        yield Buffer.from('half')
        throw new Error('line dropped')
      })(),
    )
    await expect(originals.keep(broken)).rejects.toThrow('line dropped')
    expect([await stored(), await drafts()]).toEqual([before, []])
  })

  test('of one that its check refuses', async () => {
    const before = await stored()
    const refuse = ({ bytes }: { bytes: number }) => {
      throw new Error(`${bytes} bytes are too many`)
    }
    await expect(originals.keep(Readable.from([Buffer.from('four')]), refuse)).rejects.toThrow(
      '4 bytes are too many',
    )
    expect([await stored(), await drafts()]).toEqual([before, []])
  })
})

test('a folder that is gone is told by the check', async () => {
  const gone = await mkdtemp(path.join(os.tmpdir(), 'asfound-originals-gone-'))
  const there = await openOriginals(gone)
  await there.check()
  await rm(gone, { recursive: true })
  await expect(there.check()).rejects.toMatchObject({ name: 'OutsideFailure', retryAfterSeconds: 30 })
})
