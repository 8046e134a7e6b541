import { StringDecoder } from 'node:string_decoder'

/**
 * The lines of a text, without their ends. Of one that is longer than `longest` characters only so many are kept, and one
 * more, so that it can be told: a file without any line end takes no more memory than a file with many.
 */
export async function* boundedLines(bytes: AsyncIterable<Buffer>, longest: number): AsyncGenerator<string> {
  const decoder = new StringDecoder('utf8')
  let parts: string[] = []
  let length = 0
  const keep = (text: string): void => {
    const taken = text.slice(0, longest + 1 - length)
    if (taken === '') return
    parts.push(taken)
    length += taken.length
  }
  const line = (): string => {
    const whole = parts.join('')
    parts = []
    length = 0
    return whole.endsWith('\r') ? whole.slice(0, -1) : whole
  }
  for await (const chunk of bytes) {
    const text = decoder.write(chunk)
    let from = 0
    for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', from)) {
      keep(text.slice(from, at))
      yield line()
      from = at + 1
    }
    keep(text.slice(from))
  }
  keep(decoder.end())
  if (length > 0) yield line()
}
