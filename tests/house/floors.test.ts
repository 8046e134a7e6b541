import { expect, test } from 'vitest'
import { filesUnder, importsOf, textOf, withoutComments } from './source-files.ts'

/** The house, from the ground up. What is not a room stands on the roof: main.ts, the settings, the command line. */
const FLOORS: readonly (readonly string[])[] = [
  ['base'],
  ['measure'],
  ['geometry'],
  ['catalog', 'records', 'rules'],
  ['reading', 'reconcile'],
  ['words'],
  ['brief'],
  ['store', 'scan', 'files', 'letters', 'net'],
  ['jobs'],
  ['backup'],
  ['operations'],
  ['http'],
]
const ROOF = FLOORS.length
const FIRE_LINE = 6
const ROOF_ROOMS = ['cli']

const roomOf = (file: string): string => file.split('/')[1] ?? ''

function floorOf(file: string): number {
  const floor = FLOORS.findIndex((rooms) => rooms.includes(roomOf(file)))
  return floor === -1 ? ROOF : floor
}

const files = filesUnder('src')
const pure = files.filter((file) => floorOf(file) <= FIRE_LINE)

test('every folder of the house is a room on a floor', () => {
  const known = [...FLOORS.flat(), ...ROOF_ROOMS]
  const folders = new Set(files.filter((file) => file.split('/').length > 2).map(roomOf))
  expect([...folders].filter((room) => !known.includes(room))).toEqual([])
})

test('imports go downward only', () => {
  const upward = files.flatMap((file) =>
    importsOf(file)
      .filter(({ what }) => what.startsWith('src/') && floorOf(what) > floorOf(file))
      .map(({ what }) => `${file} imports ${what}`),
  )
  expect(upward).toEqual([])
})

test('no file imports itself by way of others, by its types neither', () => {
  const graph = new Map(
    files.map((file) => [
      file,
      importsOf(file)
        .filter(({ what }) => what.startsWith('src/'))
        .map(({ what }) => what),
    ]),
  )
  const done = new Set<string>()
  const walk = (file: string, above: readonly string[]): readonly string[] => {
    if (above.includes(file)) return [[...above.slice(above.indexOf(file)), file].join(' -> ')]
    if (done.has(file)) return []
    const found = (graph.get(file) ?? []).flatMap((next) => walk(next, [...above, file]))
    done.add(file)
    return found
  }
  expect(files.flatMap((file) => walk(file, []))).toEqual([])
})

/** Libraries that are pure: the same input gives the same output for ever. */
const PURE_PACKAGES = ['zod', 'yaml']

test('below the fire line nothing reaches the world: no node, no database, no server', () => {
  const reaching = pure.flatMap((file) =>
    importsOf(file)
      .filter(({ what }) => !what.startsWith('src/') && !PURE_PACKAGES.includes(what))
      .map(({ what }) => `${file} imports ${what}`),
  )
  expect(reaching).toEqual([])
})

/** Names by which a program reaches a clock, chance, the process or the network without importing anything. */
const IMPURE =
  /\bnew Date\(\s*\)|\bDate\.now\b|\bDate\(\s*\)|\bMath\.random\b|\bperformance\b|\bcrypto\b|\bprocess\.|\bglobalThis\b|\bfetch\(|\bset(?:Timeout|Interval|Immediate)\b|\bconsole\.|\bIntl\.DateTimeFormat\(\)|\btoLocale\w*\(\s*\)/

test('below the fire line there is no clock, no chance, no process, no locale', () => {
  const impure = pure.flatMap((file) =>
    withoutComments(textOf(file))
      .split('\n')
      .filter((line) => IMPURE.test(line))
      .map((line) => `${file}: ${line.trim()}`),
  )
  expect(impure).toEqual([])
})

test('the tests above would see it: each is shown what it is to find', () => {
  for (const line of [
    'const t = Date.now()',
    'return new Date()',
    'Math.random()',
    'process.env.X',
    'fetch(url)',
  ]) {
    expect(IMPURE.test(withoutComments(line)), line).toBe(true)
  }
  expect(IMPURE.test(withoutComments('// Date.now() is not used here'))).toBe(false)
  expect(importsOf('src/main.ts').map(({ what }) => what)).toEqual(
    expect.arrayContaining(['close-with-grace', 'src/service.ts']),
  )
  expect(floorOf('src/http/app.ts')).toBeGreaterThan(floorOf('src/store/database/pool.ts'))
})
