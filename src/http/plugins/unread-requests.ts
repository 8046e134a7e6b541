import type { Socket } from 'node:net'
import { uuidv7 } from 'uuidv7'
import { PROBLEMS } from '../problem-catalog.ts'

type Fault = Error & { readonly code?: string }

const ANSWERS: Readonly<Record<string, readonly [string, string]>> = {
  ERR_HTTP_REQUEST_TIMEOUT: ['408 Request Timeout', 'The request took too long to arrive. Send it again.'],
  HPE_HEADER_OVERFLOW: ['431 Request Header Fields Too Large', 'The headers are longer than 16 kB together.'],
}
const NO_HTTP = ['400 Bad Request', 'This is not an HTTP/1.1 request.'] as const

/** For what never became a request: told in the same form as every problem, and the connection is cut. */
export function answerUnread(fault: Fault, socket: Socket): void {
  if (fault.code === 'ECONNRESET' || socket.destroyed) return
  const [line, detail] = ANSWERS[fault.code ?? ''] ?? NO_HTTP
  const { title } = PROBLEMS['unreadable-request']
  const status = Number.parseInt(line, 10)
  const body = JSON.stringify({
    type: '/problems/unreadable-request',
    title,
    status,
    detail,
    requestId: uuidv7(),
  })
  if (socket.writable)
    socket.write(
      `HTTP/1.1 ${line}\r\nconnection: close\r\ncontent-type: application/problem+json; charset=utf-8\r\n` +
        `content-length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
    )
  socket.destroySoon()
}
