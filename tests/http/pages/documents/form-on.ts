/** The form with the values, as a browser without scripts would send it unticked. */
export type FormOn = {
  readonly values: Readonly<Record<string, string>>
  readonly boxes: readonly string[]
  readonly faults: Readonly<Record<string, string>>
}

const NAMED: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
}
const plain = (text: string): string => text.replace(/&(?:amp|lt|gt|quot|#39);/g, (sign) => NAMED[sign]!)
const attribute = (tag: string, name: string): string | undefined => {
  const value = new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1]
  return value === undefined ? undefined : plain(value)
}

/** Reads the markup of a page: the first form with a version, and what stands beside its fields. */
export function formOn(body: string): FormOn {
  const form = body.match(/<form[^>]*method="post"[^>]*action="[^"]*documents[^>]*>[\s\S]*?<\/form>/g) ?? []
  const text = form.find((it) => it.includes('/transcription')) ?? form[0] ?? ''
  const values: Record<string, string> = {}
  const boxes: string[] = []
  for (const [tag] of text.matchAll(/<input[^>]*>/g)) {
    const name = attribute(tag, 'name')!
    if (attribute(tag, 'type') === 'checkbox') boxes.push(name)
    else values[name] = attribute(tag, 'value') ?? ''
  }
  for (const [, tag, options] of text.matchAll(/(<select[^>]*>)([\s\S]*?)<\/select>/g)) {
    const chosen = options!.match(/<option[^>]* selected>/)?.[0]
    values[attribute(tag!, 'name')!] = (chosen && attribute(chosen, 'value')) ?? ''
  }
  for (const [, tag, said] of text.matchAll(/(<textarea[^>]*>)([\s\S]*?)<\/textarea>/g)) {
    values[attribute(tag!, 'name')!] = plain(said!)
  }
  const faults = Object.fromEntries(
    [...text.matchAll(/data-of="([^"]*)"(?:(?!data-of)[\s\S])*?<p class="fault"[^>]*>([^<]*)</g)].map(
      ([, name, says]) => [name!, plain(says!)],
    ),
  )
  return { values, boxes, faults }
}
