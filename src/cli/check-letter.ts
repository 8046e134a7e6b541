/**
 * `npm run letter:check -- letter.json --keys jwks.json [--pdf letter.pdf]`: whether a letter is genuine, by the published
 * keys and nothing else. `letter.json` is the answer of `/v1/letters/{code}/verification`, or a file with the signature
 * alone. Ends with 0 where everything fits, 1 where something does not, 2 where it could not be asked.
 */
import { readFile } from 'node:fs/promises'
import { parseArgs } from 'node:util'
import type { JSONWebKeySet } from 'jose'
import { LETTER_TITLES } from '../letters/content/frame.ts'
import { saidBeside } from '../letters/signing/said-beside.ts'
import { isPdfOf, verifyLetter } from '../letters/signing/verify.ts'
import type { LetterStatement } from '../letters/statement.ts'
import { printDate } from '../words/date.ts'

const USAGE = 'npm run letter:check -- letter.json --keys jwks.json [--pdf letter.pdf]'

/** The file can't be had, or is not what it should be: nothing is known of the letter. */
class CannotAsk extends Error {}

async function main(): Promise<boolean> {
  const options = { keys: { type: 'string' }, pdf: { type: 'string' } } as const
  const { values, positionals } = parseArgs({ options, allowPositionals: true })
  const [file] = positionals
  if (file === undefined || values.keys === undefined) throw new CannotAsk(`Usage: ${USAGE}`)
  const keys = keySet(await textOf(values.keys))
  const { signature, beside } = readFileOf(await textOf(file))
  const checked = await verifyLetter(signature, keys)
  if (!checked.ok) {
    console.log(`NOT GENUINE: ${checked.error}.`)
    return false
  }
  const altered = saidBeside(beside, checked.value)
  if (altered.length > 0) {
    console.log(
      `NOT GENUINE: ${file} differs from what is signed, or says something that is not signed: ${altered.join(', ')}.`,
    )
    console.log(`What is signed:\n${JSON.stringify(checked.value, null, 2)}`)
    return false
  }
  console.log(told(checked.value))
  if (values.pdf === undefined) return true
  const fits = isPdfOf(checked.value, await bytesOf(values.pdf))
  console.log(
    fits ? 'The PDF is the one that was signed.' : 'NOT THE SIGNED PDF: its contents are different.',
  )
  return fits
}

const told = ({ kind, number, county, parcel, issuedOn, asOf, status }: LetterStatement): string =>
  [
    `GENUINE by these keys: ${LETTER_TITLES[kind].toLowerCase()} ${number} of ${county.name}, issued ${printDate(issuedOn, 'en')}`,
    `  parcel ${parcel.number}${parcel.address === null ? '' : `, ${parcel.address}`}, as of ${printDate(asOf, 'en')}: ${status.replaceAll('-', ' ')}`,
    'Only the service can say if the file has changed since or the letter was withdrawn.',
  ].join('\n')

/** Of an answer of the service, its signature and what is beside it; of anything else, the text itself. */
function readFileOf(text: string): { readonly signature: string; readonly beside: Record<string, unknown> } {
  if (!text.trim().startsWith('{')) return { signature: text.trim(), beside: {} }
  const beside = parsed(text) as Record<string, unknown>
  if (typeof beside.signature === 'string') return { signature: beside.signature, beside }
  throw new CannotAsk('The file has no signature. Save the full answer of /v1/letters/CODE/verification.')
}

function keySet(text: string): JSONWebKeySet {
  const { keys } = parsed(text) as { readonly keys?: unknown }
  if (Array.isArray(keys)) return { keys }
  throw new CannotAsk('The key file is not a JWK set. Save /.well-known/jwks.json of the service.')
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (fault) {
    throw new CannotAsk(`That is not JSON: ${(fault as Error).message}`)
  }
}

const bytesOf = (file: string): Promise<Buffer> =>
  readFile(file).catch((fault: Error) => {
    throw new CannotAsk(`${file} cannot be read: ${fault.message}`)
  })

const textOf = async (file: string): Promise<string> => (await bytesOf(file)).toString('utf8')

try {
  process.exitCode = (await main()) ? 0 : 1
} catch (fault) {
  const known = fault instanceof CannotAsk || (fault as { code?: string }).code?.startsWith('ERR_PARSE_ARGS')
  console.error(known ? (fault as Error).message : fault)
  process.exitCode = 2
}
