import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { issueLetter } from '../../../operations/letters/issue-letter.ts'
import { listLetters, readLetterPdf } from '../../../operations/letters/read-letter.ts'
import { withdrawLetter } from '../../../operations/letters/withdraw-letter.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { idPath, parcelPath } from '../shapes/paths.ts'
import { checkedFor } from './check.ts'
import { lettersInTurn } from './in-turn.ts'
import {
  letter,
  letterBody,
  presentLetter,
  presentVerification,
  verification,
  withdrawalBody,
} from './shapes.ts'

const tags = ['Letters']
const pdfBytes = z.string().meta({ format: 'binary' })

export const letters: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/parcels/:parcel/letters',
    {
      config: { access: ALL_ROLES, idempotent: true, inTurn: lettersInTurn },
      schema: {
        summary: 'Issue a letter: numbered, dated, sealed',
        description:
          'Agents get status letters. Firms also get briefs, and reports on their own findings. The PDF is PDF/UA-1 and ' +
          'never changes. Anyone who holds its code can check the letter.',
        tags,
        operationId: 'issueLetter',
        params: parcelPath,
        body: letterBody,
        response: { 201: letter },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const issued = answered(
        await issueLetter(context, actor, params.parcel, body.kind, body.language, body.system),
      )
      const presented = presentLetter(issued.parcel, issued.letter, context.letters.checkAddress)
      reply.code(201).header('location', presented.pdf)
      return presented
    },
  )

  app.get(
    '/counties/:county/parcels/:parcel/letters',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'The letters on a parcel, newest first',
        description: 'A reviewer sees all; others those issued to their own organization.',
        tags,
        operationId: 'listLetters',
        params: parcelPath,
        response: { 200: z.object({ items: z.array(letter) }) },
      },
    },
    async ({ context, actor, params }) => {
      const read = answered(await listLetters(context, actor, params.parcel))
      const { checkAddress } = context.letters
      return { items: read.letters.map((it) => presentLetter(read.parcel, it, checkAddress)) }
    },
  )

  app.post(
    '/counties/:county/letters/:id/withdrawal',
    {
      config: { access: ['reviewer'], idempotent: true },
      schema: {
        summary: 'Withdraw a letter, with a reason',
        description:
          'This cannot be undone. Anyone who checks the letter sees that it is withdrawn, and why.',
        tags,
        operationId: 'withdrawLetter',
        params: idPath,
        body: withdrawalBody,
        response: { 201: z.object({ id: z.string(), number: z.string(), reason: z.string() }) },
      },
    },
    async ({ context, actor, params, body }, reply) => {
      const { id, number } = answered(await withdrawLetter(context, actor, params.id, body.reason))
      reply.code(201)
      return { id, number, reason: body.reason }
    },
  )

  app.get(
    '/letters/:id(^[0-9a-fA-F]{8}-[0-9a-fA-F-]{27}$).pdf',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'A letter as PDF',
        description: 'The very bytes that were sealed (application/pdf).',
        tags,
        operationId: 'readLetterPdf',
        params: z.object({ id: z.guid('is not an id') }),
        response: { 200: { description: 'The PDF', content: { 'application/pdf': { schema: pdfBytes } } } },
      },
    },
    async ({ context, caller, params }, reply) => {
      const { letter: it, pdf } = answered(await readLetterPdf(context, caller, params.id))
      return (
        reply
          .type('application/pdf')
          .header('content-length', it.pdfBytes)
          .header('content-disposition', `inline; filename="${it.kind}-${it.number}.pdf"`)
          .header('cache-control', 'private, max-age=31536000, immutable')
          .header('etag', `"${it.pdfSha256}"`)
          // Bytes as they are kept; the schema only describes them.
          .send(pdf as never)
      )
    },
  )

  app.get(
    '/letters/:code/verification',
    {
      config: { access: 'open' },
      schema: {
        summary: 'Check a letter by its code',
        description:
          'Open to anyone who holds the code. Says if the letter is valid, superseded or withdrawn, and returns the ' +
          'signature. What the letter says (its number, parcel, dates, status and the hash of its PDF) is in the ' +
          'signed part alone. The keys at /.well-known/jwks.json verify it without this service.',
        tags,
        operationId: 'checkLetter',
        params: z.object({
          code: z
            .string()
            .max(100)
            .meta({ description: 'In any case and spacing', examples: ['H7KQ-3MXR-9CWT-4FJD'] }),
        }),
        response: { 200: verification },
      },
    },
    async (request, reply) => {
      const checked = await checkedFor(request, request.params.code)
      reply.header('cache-control', 'no-store')
      return presentVerification(checked)
    },
  )
}
