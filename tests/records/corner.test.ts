import { expect, test } from 'vitest'
import { sameCorner } from '../../src/records/corner.ts'

test.each([
  ['rear left corner of house', 'Rear left corner'],
  ['left rear', 'REAR LEFT COR.'],
  ['back right corner', 'rear right'],
  ['NE corner', 'northeast corner of dwelling'],
  ['n.e. corner', 'North-East'],
  ['corner of porch', 'porch corner'],
  ['the house', 'The House'],
])('%s is %s', (a, b) => {
  expect(sameCorner(a, b)).toBe(true)
  expect(sameCorner(b, a)).toBe(true)
})

test.each([
  ['rear left corner', 'rear right corner'],
  ['NE corner', 'NW corner'],
  ['corner of garage', 'corner of house'],
  ['left corner', 'rear left corner'],
])('%s is not %s', (a, b) => expect(sameCorner(a, b)).toBe(false))
