import fc from 'fast-check'

/** Numbers as no program of this language would write them; what says so in a value is written into the JSON as it is. */
const RAW = [
  '-0',
  '1e999',
  '-1e999',
  '1e-400',
  '1E+2',
  '0.1e1',
  '1.0',
  'NaN',
  '-Infinity',
  '01',
  '9'.repeat(400),
]

/** JSON as it is sent: a text that says it is raw leaves as a number, whether or not JSON has such numbers. */
export const asSent = (value: unknown): string =>
  (JSON.stringify(value) ?? 'null').replaceAll(/"raw (-?[\d.a-zA-Z+-]+)"/g, '$1')

/** What breaks programs: the ends of types, other kinds of value, dates that are none, text that is not quite text. */
const LEAVES: readonly unknown[] = [
  ...RAW.map((number) => `raw ${number}`),
  null,
  true,
  0,
  -0,
  -1,
  0.1,
  1e21,
  1e308,
  -1e308,
  5e-324,
  2 ** 31,
  2 ** 53,
  2 ** 63,
  '',
  ' ',
  '\u0000',
  '\u001b[2J',
  Array.from({ length: 32 }, (_, code) => String.fromCharCode(code)).join(''),
  Array.from({ length: 33 }, (_, code) => String.fromCharCode(0x7f + code)).join(''),
  'a\r\nSet-Cookie: b=c',
  '\u202etxet',
  '\ufeff',
  '\ud800',
  'e\u0301'.repeat(200),
  '👩‍👩‍👧‍👦',
  '١٢ ft',
  '𝟙𝟘 ft',
  'NaN',
  'Infinity',
  '1e400 ft',
  '1/0 in',
  '-0 ft',
  '0 ft',
  '-3 ft',
  '99999999999999999999 gal',
  "'; drop table permit; --",
  '$1',
  '%s%n',
  '=cmd()',
  '<script>alert(1)</script>',
  '{{7*7}}',
  '2023-02-29',
  '1900-02-29',
  '2024-02-30',
  '2024-02-29',
  '02/29/24',
  '2/29/1900',
  '2/29/2000',
  '2/29/75',
  '6/20/74',
  '12/31/1899',
  '13/13/13',
  '1857-01-01',
  '00/00/00',
  '0000-01-01',
  '1583-10-14',
  '9999-12-31',
  '+275760-09-13T00:00:00Z',
  '../../../../etc/passwd',
  'x'.repeat(5_000),
  [],
  {},
  [[[[[[[[[[]]]]]]]]]],
  { ft: -1 },
  { ft: Number.MAX_VALUE },
  JSON.parse('{"__proto__": {"role": "reviewer"}}'),
  { constructor: { prototype: 1 } },
]
export const leaf: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...LEAVES) },
  { weight: 1, arbitrary: fc.jsonValue({ stringUnit: 'binary', maxDepth: 3 }) },
)

/** A value with one to three of its places (or one that is not there) put wrong. */
export const spoilt = (value: unknown): fc.Arbitrary<unknown> =>
  fc
    .array(fc.tuple(fc.constantFrom(...pathsOf(value)), leaf), { minLength: 1, maxLength: 3 })
    .map((changes) => changes.reduce((now, [path, to]) => put(now, path, to), value))

type Path = readonly (string | number)[]

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inner = Object.keys(value).flatMap((key) =>
    pathsOf((value as Record<string, unknown>)[key], [...path, Array.isArray(value) ? Number(key) : key]),
  )
  return [path, ...inner, [...path, 'unheard of']]
}

function put(value: unknown, [key, ...rest]: Path, to: unknown): unknown {
  if (key === undefined) return to
  // What was put there before may be of another kind than the path was made for.
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value) && typeof key !== 'number') return value
  const copy: Record<string | number, unknown> = Array.isArray(value) ? ([...value] as never) : { ...value }
  copy[key] = rest.length === 0 ? to : put(copy[key], rest, to)
  return copy
}
