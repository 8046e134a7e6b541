/** A child that tries to reach a server on this machine, and says whether it did. */
import { writeSync } from 'node:fs'
import net from 'node:net'

const socket = net.connect(Number(process.argv[2]), '127.0.0.1')
const say = (reached: boolean): never => {
  writeSync(3, `${JSON.stringify({ reached })}\n`)
  process.exit(0)
}
socket.once('connect', () => say(true))
socket.once('error', () => say(false))
