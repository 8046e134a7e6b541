import type { InjectOptions } from 'fastify'

/** A multipart request as a browser sends it. */
export async function uploading(
  url: string,
  parts: Readonly<Record<string, string | { readonly bytes: Uint8Array; readonly name: string }>>,
  headers: Readonly<Record<string, string>> = {},
): Promise<InjectOptions> {
  const form = new FormData()
  for (const [name, part] of Object.entries(parts)) {
    if (typeof part === 'string') form.set(name, part)
    else form.set(name, new Blob([new Uint8Array(part.bytes)], { type: 'application/pdf' }), part.name)
  }
  const sent = new Response(form)
  return {
    method: 'POST',
    url,
    headers: { ...headers, 'content-type': sent.headers.get('content-type') ?? '' },
    body: Buffer.from(await sent.arrayBuffer()),
  }
}
