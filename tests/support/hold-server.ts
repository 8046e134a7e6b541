/** A process that holds the embedded server of a folder until it is killed. Run as: node hold-server.ts <data folder> */
import { holdEmbeddedServer } from '../../src/store/database/embedded/hold.ts'

const held = await holdEmbeddedServer({ dataFolder: process.argv[2] ?? '', lingerMs: 300 })
process.stdout.write(`${held.url('postgres')}\n`)
setInterval(() => {}, 60_000)
