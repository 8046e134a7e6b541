import type { FastifyReply, FastifyRequest } from 'fastify'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import { addressOf } from '../../../operations/systems/system-address.ts'
import { systemName, systemReach } from '../../../words/system.ts'
import { answered } from '../../api/answer.ts'
import { html } from '../../pages/html.ts'
import { parcelPath } from '../../pages/layout/addresses.ts'
import { inspectionPath } from '../addresses.ts'

/** A parcel with several systems: each is inspected by itself, and which one is asked first. */
export async function sendChoice(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
): Promise<FastifyReply> {
  const { context, actor } = request
  const { parcel, file } = answered(await readParcel(context, actor, asked))
  const systems = file?.systems ?? []
  const { county } = actor
  return reply.page({
    title: `Inspection ${parcel.number}`,
    body: html`
      <h1><span class="number">${parcel.number} ${parcel.address}</span> Which system?</h1>
      <p>This parcel has ${systems.length} septic systems. Inspect and submit each one by itself.</p>
      <ul class="hits">
        ${systems.map(
          (it) => html`
            <li>
              <a class="button" href="${inspectionPath(county, addressOf(parcel.number, it, systems))}">
                ${systemName(it, systems)}
              </a>
              <p class="soft">${systemReach(it)}</p>
            </li>
          `,
        )}
      </ul>
      <p>
        Found a system that is not listed? Inspect one of these, and say there that a second system was found.
      </p>
      <p><a href="${parcelPath(county, parcel.number)}">Back to the parcel</a></p>
    `,
  })
}
