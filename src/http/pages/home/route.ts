import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { listCounties } from '../../../operations/counties/read-counties.ts'
import type { Role } from '../../../store/database/actor.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { html } from '../html.ts'
import { countyPath, inspectionsPath, queuePath, searchPath } from '../layout/addresses.ts'

/** Where each begins the day. */
const FIRST: { readonly [R in Role]: (county: string) => string } = {
  reviewer: queuePath,
  firm: inspectionsPath,
  agent: searchPath,
}

export const home: FastifyPluginAsyncZod = async (app) => {
  app.get('/', { config: { access: ALL_ROLES } }, async ({ caller, context }, reply) => {
    const [only, ...others] = caller.counties
    if (only !== undefined && others.length === 0) return reply.redirect(countyPath(only), 303)
    const counties = await listCounties(context, caller.counties)
    return reply.page({
      title: 'Counties',
      body:
        counties.length === 0
          ? html`
            <h1>No county yet</h1>
            <p class="lead">
              Your organization has no access to a county. Ask the county’s health department to add it.
            </p>
          `
          : html`
            <h1>Which county?</h1>
            <ul class="plain">
              ${counties.map(({ id, name }) => html`<li><a href="${countyPath(id)}">${name}</a></li>`)}
            </ul>
          `,
    })
  })

  app.get('/counties/:county', { config: { access: ALL_ROLES } }, async ({ actor }, reply) =>
    reply.redirect(FIRST[actor.role](actor.county), 303),
  )
}
