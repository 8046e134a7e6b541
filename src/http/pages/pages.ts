/** The pages for people, on the same operations as the API: one folder a page, each route, present and view. */
import type { FastifyPluginAsync } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { code } from './account/code/route.ts'
import { invitation } from './account/invitation/route.ts'
import { organizationPages } from './account/organizations/route.ts'
import { outside } from './account/outside/route.ts'
import { account } from './account/own/route.ts'
import { peoplePages } from './account/people/route.ts'
import { secondStep } from './account/second-step/route.ts'
import { tokenPages } from './account/tokens/route.ts'
import { assets } from './assets-route.ts'
import { brief } from './brief/route.ts'
import { decision } from './decision/route.ts'
import { documentPages } from './documents/route.ts'
import { formPages } from './forms/route.ts'
import { glance } from './glance/route.ts'
import { home } from './home/route.ts'
import { importPages } from './imports/route.ts'
import { inspection } from './inspection/route.ts'
import { inspections } from './inspections/route.ts'
import { letter } from './letter/route.ts'
import { letterCheck } from './letter-check/route.ts'
import { parcel } from './parcel/route.ts'
import { patterns } from './patterns/route.ts'
import { answerFaultAsPage } from './problem/answer.ts'
import { queue } from './queue/route.ts'
import { reconciliation } from './reconciliation/route.ts'
import { rules } from './rules/route.ts'
import { rulesTrial } from './rules-trial/route.ts'
import { search } from './search/route.ts'
import { signIn } from './sign-in/route.ts'
import { subscriptionPages } from './subscription/route.ts'

const PAGES: readonly FastifyPluginAsyncZod[] = [
  signIn,
  code,
  outside,
  invitation,
  account,
  secondStep,
  tokenPages,
  peoplePages,
  organizationPages,
  home,
  search,
  queue,
  parcel,
  decision,
  letter,
  subscriptionPages,
  letterCheck,
  reconciliation,
  brief,
  inspection,
  inspections,
  glance,
  patterns,
  rules,
  rulesTrial,
  importPages,
  documentPages,
  formPages,
]

export const pages: FastifyPluginAsync = async (app) => {
  app.setErrorHandler(answerFaultAsPage)
  app.addHook('onRoute', (route) => {
    // The API description tells of the API.
    route.schema = { ...route.schema, hide: true }
  })
  // Only here: the API takes no forms, so none of another site can reach it.
  app.addContentTypeParser(
    'application/x-www-form-urlencoded',
    { parseAs: 'string' },
    async (_: unknown, body: string) => Object.fromEntries(new URLSearchParams(body)),
  )
  await app.register(assets)
  for (const page of PAGES) await app.register(page)
}
