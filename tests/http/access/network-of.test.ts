import fc from 'fast-check'
import { expect, test } from 'vitest'
import { networkOf } from '../../../src/http/access/network-of.ts'

test.each([
  ['192.0.2.7', '192.0.2.7'],
  ['::ffff:192.0.2.7', '192.0.2.7'],
  ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
  ['2001:0DB8:0001:0002::6', '2001:db8:1:2::/64'],
  ['2001:db8::1', '2001:db8:0:0::/64'],
  ['fe80::1%eth0', 'fe80:0:0:0::/64'],
  ['::1', '0:0:0:0::/64'],
  ['64:ff9b::192.0.2.33', '64:ff9b:0:0::/64'],
])('%s is told by %s', (address, network) => {
  expect(networkOf(address)).toBe(network)
})

test('whatever the second half is, and however it is written, the network is the same', () => {
  const group = fc.integer({ min: 1, max: 0xffff }).map((it) => it.toString(16))
  fc.assert(
    fc.property(
      fc.tuple(group, group, group, group),
      fc.tuple(group, group, group, group),
      (first, second) => {
        const long = [...first, ...second].map((it) => it.padStart(4, '0')).join(':')
        expect(networkOf(long)).toBe(networkOf(`${first.join(':')}::${second.slice(3).join(':')}`))
      },
    ),
  )
})
