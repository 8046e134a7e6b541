import { describe, expect, test } from 'vitest'
import { isPublicAddress } from '../../src/net/public-address.ts'

describe('an address that may be sent to', () => {
  test.each([
    '8.8.8.8',
    '1.1.1.1',
    '172.15.255.255',
    '172.32.0.1',
    '192.167.255.255',
    '100.63.0.1',
    '2606:4700::1111',
  ])('%s', (address) => expect(isPublicAddress(address)).toBe(true))
})

/** Each range of IANA's special-purpose registries by an address at one of its ends. */
describe('an address that may not', () => {
  test.each([
    ['127.0.0.1', 'loopback'],
    ['127.255.255.254', 'loopback, its far end'],
    ['10.0.0.1', 'private'],
    ['172.16.0.1', 'private'],
    ['172.31.255.255', 'private'],
    ['192.168.0.10', 'private'],
    ['169.254.169.254', 'link-local, where clouds keep their secrets'],
    ['100.64.0.1', 'shared by carriers'],
    ['0.0.0.0', 'this host'],
    ['224.0.0.1', 'multicast'],
    ['255.255.255.255', 'broadcast'],
    ['198.18.0.1', 'benchmarks'],
    ['203.0.113.7', 'documentation'],
    ['::1', 'loopback'],
    ['::', 'unspecified'],
    ['::ffff:10.0.0.1', 'private, mapped'],
    ['::ffff:8.8.8.8', 'mapped: write it as it is'],
    ['::127.0.0.1', 'compatible, of old'],
    ['64:ff9b::7f00:1', 'translated loopback'],
    ['fe80::1', 'link-local'],
    ['fe80::1%eth0', 'link-local with its zone'],
    ['fc00::1', 'unique local'],
    ['fd12:3456::1', 'unique local'],
    ['ff02::1', 'multicast'],
    ['2002:7f00:1::', '6to4 of loopback'],
    ['2001:0:7f00:1::', 'Teredo'],
    ['2001:db8::1', 'documentation'],
    ['localhost', 'not an address'],
    ['0177.0.0.1', 'not an address: octal'],
    ['', 'nothing'],
  ])('%s (%s)', (address) => expect(isPublicAddress(address)).toBe(false))
})
