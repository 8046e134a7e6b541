/** Runs every benchmark of this folder, one after the other, each in a process of its own: `npm run bench [-- name …]`. */
import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const folder = new URL('.', import.meta.url)
const wanted = process.argv.slice(2)
const benches = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts'))
  .filter((file) => wanted.length === 0 || wanted.some((name) => file.startsWith(name)))
  .sort()

if (benches.length === 0) {
  process.stderr.write(`No benchmark is named ${wanted.join(' or ')}.\n`)
  process.exit(1)
}
const failed = benches.filter((file) => {
  process.stderr.write(`${file}\n`)
  return (
    spawnSync(process.execPath, [fileURLToPath(new URL(file, folder))], { stdio: 'inherit' }).status !== 0
  )
})
if (failed.length > 0) {
  process.stderr.write(`Failed: ${failed.join(', ')}\n`)
  process.exit(1)
}
