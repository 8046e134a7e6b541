import { expect, test } from 'vitest'
import { faultInWords } from '../../../src/rules/parse/fault.ts'
import { type PackText, parsePacks } from '../../../src/rules/parse/parse-packs.ts'

const pack = (path: string, kind: string, rest = ''): PackText => ({
  path: `${path}.yaml`,
  text: `pack: ${path}\njurisdiction: { kind: ${kind}, name: ${path.split('/')[0]} }\ntitle: T\n${rest}`,
})

const tolerance = (from: string, until: string) => `parameters:
  - name: tank.nominal-tolerance-pct
    governed-by: inspected
    entries:
      - from: ${from}
        until: ${until}
        value: { amount: 5, unit: pct }
        citations: [{ verified: common-practice }]
`

const faults = (...texts: PackText[]): readonly string[] => {
  const parsed = parsePacks(texts)
  return parsed.ok ? [] : parsed.error.map(faultInWords)
}

test('sound packs make a book', () => {
  expect(faults(pack('a/code', 'county', 'extends: [b/code]\n'), pack('b/code', 'state'))).toEqual([])
})

test('a pack that nobody wrote can’t be extended or adopted', () => {
  const text = 'extends: [b/code]\nadoption:\n  - { from: null, until: null, packs: [c/code], note: n }\n'
  expect(faults(pack('a/code', 'county', text))).toEqual([
    'a/code.yaml:4:11: there is no pack b/code',
    'a/code.yaml:6:40: there is no pack c/code',
  ])
})

test('a faulty pack’s faults are not blamed on whoever extends it', () => {
  expect(faults(pack('a/code', 'county', 'extends: [b/code]\n'), pack('b/code', 'province'))).toEqual([
    'b/code.yaml:2:23: kind must be one of county, state, model-code, federal, lender, practice',
  ])
})

test('packs can’t go round in a circle', () => {
  expect(
    faults(pack('a/code', 'state', 'extends: [b/code]\n'), pack('b/code', 'state', 'extends: [a/code]\n')),
  ).toEqual([
    'a/code.yaml:4:11: b/code leads back to a/code',
    'b/code.yaml:4:11: a/code leads back to b/code',
  ])
})

test('a state can’t lie over a county', () => {
  expect(faults(pack('a/code', 'state', 'extends: [b/code]\n'), pack('b/code', 'county'))).toEqual([
    "a/code.yaml:4:11: a state pack can't lie over a county pack",
  ])
})

test('a pack is named after its file, once', () => {
  const astray = { ...pack('a/code', 'county'), path: 'a/tanks.yaml' }
  expect(faults(pack('a/code', 'county'), astray)).toEqual([
    'a/tanks.yaml:1:7: the pack a/code is also in a/code.yaml',
    'a/tanks.yaml:1:7: the pack is named a/code but its file says a/tanks',
  ])
})

test('the packs of one place are one jurisdiction and do not answer twice', () => {
  const one = pack('a/code', 'county', tolerance('null', '2000-01-01'))
  const next = pack('a/more', 'county', tolerance('2000-01-01', 'null'))
  const twice = pack('a/more', 'county', tolerance('1999-12-31', 'null'))
  expect(faults(one, next)).toEqual([])
  expect(faults(one, twice)).toEqual([
    'a/more.yaml:8:9: a/code.yaml answers tank.nominal-tolerance-pct on some of the same days',
  ])
  expect(faults(one, pack('a/more', 'state'))).toEqual([
    'a/more.yaml:2:15: a/code.yaml calls this place a (county), here it is a (state)',
  ])
})
