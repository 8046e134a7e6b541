import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type AuditEntry, BEFORE_THE_FIRST, entryHash } from '../../../src/store/audit/entry.ts'
import { followChain } from '../../../src/store/audit/follow-chain.ts'
import type { HashedEntry } from '../../../src/store/audit/read-entries.ts'

const hex = fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 64, maxLength: 64 })
const content = fc.record({
  at: fc
    .date({ noInvalidDate: true, min: new Date(0), max: new Date('9999-01-01') })
    .map((it) => it.toISOString()),
  act: fc.constantFrom<AuditEntry['act'][]>('made', 'changed', 'removed'),
  kind: fc.constantFrom('permit', 'decision'),
  record: fc.oneof(fc.uuid(), fc.string({ unit: 'binary' })),
  account: fc.option(fc.uuid()),
  organization: fc.option(fc.uuid()),
  role: fc.constantFrom('reviewer', 'firm', 'owner'),
  beforeHash: fc.option(hex),
  afterHash: fc.option(hex),
})

/** A chain as it would have been written. */
const chain = fc.array(content, { minLength: 2, maxLength: 12 }).map((contents) => {
  let before = BEFORE_THE_FIRST
  return contents.map((it, index): HashedEntry => {
    const entry = { county: 'quillback', number: index + 1, ...it }
    before = entryHash(before, entry)
    return { entry, hash: before }
  })
})

async function* each<T>(items: readonly T[]) {
  yield* items
}
const follow = (entries: readonly HashedEntry[], known?: Parameters<typeof followChain>[2]) =>
  followChain('quillback', each(entries), known)

describe('a chain', () => {
  test('is SHA-256 over the hash before and the canonical JSON of the entry', () => {
    const entry: AuditEntry = {
      county: 'quillback',
      number: 1,
      at: '2026-10-12T15:00:00.000001Z',
      act: 'made',
      kind: 'permit',
      record: 'a "quoted" ü',
      account: null,
      organization: null,
      role: 'owner',
      beforeHash: null,
      afterHash: 'a'.repeat(64),
    }
    // Written out by RFC 8785: keys in order, no white space, only what must be is escaped.
    const text = `{"account":null,"act":"made","afterHash":"${'a'.repeat(64)}","at":"2026-10-12T15:00:00.000001Z","beforeHash":null,"county":"quillback","kind":"permit","number":1,"organization":null,"record":"a \\"quoted\\" ü","role":"owner"}`
    const expected = createHash('sha256').update('0'.repeat(64)).update(text, 'utf8').digest('hex')
    expect(entryHash(BEFORE_THE_FIRST, entry)).toBe(expected)
  })

  test('as it was written is followed to its head', async () => {
    await fc.assert(
      fc.asyncProperty(chain, async (entries) => {
        const last = entries.at(-1)!
        expect(await follow(entries)).toEqual({
          head: { county: 'quillback', number: last.entry.number, hash: last.hash },
          fault: undefined,
        })
      }),
    )
  })

  test('with anything changed, left out, put in or exchanged is stopped at that entry or the next', async () => {
    const tampering = fc.record({
      how: fc.constantFrom('change', 'hash', 'drop', 'double', 'swap'),
      place: fc.nat(),
      other: content,
    })
    await fc.assert(
      fc.asyncProperty(chain, tampering, async (entries, { how, place, other }) => {
        // The last entry may vanish unseen: that is what noted heads are for.
        const at = how === 'drop' || how === 'swap' ? place % (entries.length - 1) : place % entries.length
        const { entry, hash } = entries[at]!
        const bad = [...entries]
        if (how === 'change') {
          const changed = { ...entry, ...other }
          fc.pre(JSON.stringify(changed) !== JSON.stringify(entry))
          bad[at] = { entry: changed, hash }
        }
        if (how === 'hash') bad[at] = { entry, hash: createHash('sha256').update(hash).digest('hex') }
        if (how === 'drop') bad.splice(at, 1)
        if (how === 'double') bad.splice(at, 0, bad[at]!)
        if (how === 'swap') [bad[at], bad[at + 1]] = [bad[at + 1]!, bad[at]!]
        const { fault, head } = await follow(bad)
        expect(fault).toBeDefined()
        expect(head.number).toBeGreaterThanOrEqual(at)
        expect(head.number).toBeLessThanOrEqual(at + 1)
      }),
    )
  })

  test('written anew from some entry on follows, and is found by a head noted before', async () => {
    await fc.assert(
      fc.asyncProperty(chain, fc.nat(), content, async (entries, place, other) => {
        const at = place % entries.length
        fc.pre(JSON.stringify({ ...entries[at]!.entry, ...other }) !== JSON.stringify(entries[at]!.entry))
        let before = entries[at - 1]?.hash ?? BEFORE_THE_FIRST
        const rewritten = entries.map(({ entry, hash }, index) => {
          if (index < at) return { entry, hash }
          const now = index === at ? { ...entry, ...other } : entry
          before = entryHash(before, now)
          return { entry: now, hash: before }
        })
        const { entry: last, hash } = entries.at(-1)!
        const noted = [{ county: 'quillback', number: last.number, hash }]
        expect((await follow(rewritten)).fault).toBeUndefined()
        expect((await follow(rewritten, noted)).fault).toMatch(/is another than was noted/)
        expect((await follow(entries, noted)).fault).toBeUndefined()
        expect((await follow(entries.slice(0, -1), noted)).fault).toMatch(/was noted and is not there/)
      }),
    )
  })
})
