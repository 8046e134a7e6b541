import net from 'node:net'

/**
 * What one asker is told from another by, in the network: an IPv4 address, or the first half of an IPv6 address, for every
 * customer of an IPv6 network has at least a /64 to change addresses in (RFC 6177; RFC 4291, 2.5.4).
 */
export function networkOf(address: string): string {
  if (!net.isIPv6(address)) return address
  const plain = address.split('%', 1)[0]!.toLowerCase()
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/.exec(plain)?.[1]
  if (mapped) return mapped
  const [head = '', tail] = plain.split('::')
  const parts = (text: string): readonly string[] => (text === '' ? [] : text.split(':'))
  const [before, after] = [parts(head), tail === undefined ? [] : parts(tail)]
  // An IPv4 address at the end stands for two groups.
  const groups = before.length + after.length + (after.at(-1)?.includes('.') ? 1 : 0)
  const zeros = tail === undefined ? 0 : 8 - groups
  const whole = [...before, ...Array.from({ length: zeros }, () => '0'), ...after]
  return `${whole
    .slice(0, 4)
    .map((group) => group.replace(/^0+(?=.)/, ''))
    .join(':')}::/64`
}
