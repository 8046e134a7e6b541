import { BlockList, isIP } from 'node:net'

/**
 * Addresses that are not out on the Internet: the machine itself, its network, and what is set aside for special use
 * (IANA's special-purpose address registries, RFC 6890 and its successors; ranges from memory of the registries).
 */
const SPECIAL = new BlockList()
for (const [network, prefix] of [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.88.99.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
] as const) {
  SPECIAL.addSubnet(network, prefix, 'ipv4')
}
/** Within 2000::/3: protocol assignments with Teredo and ORCHID, documentation, 6to4 (which carries any IPv4 address). */
for (const [network, prefix] of [
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['3fff::', 20],
] as const) {
  SPECIAL.addSubnet(network, prefix, 'ipv6')
}

/** All of IPv6 that is given out to anybody; everything else is local, mapped, translated or reserved. */
const GLOBAL = new BlockList()
GLOBAL.addSubnet('2000::', 3, 'ipv6')

/** Whether an address is out on the Internet, and not this machine, its network or set aside. False for what is none. */
export function isPublicAddress(address: string): boolean {
  switch (isIP(address)) {
    case 4:
      return !SPECIAL.check(address, 'ipv4')
    case 6:
      // A zone names an interface of this machine.
      return !address.includes('%') && GLOBAL.check(address, 'ipv6') && !SPECIAL.check(address, 'ipv6')
    default:
      return false
  }
}
