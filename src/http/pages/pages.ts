/** The pages for people, on the same operations as the API. One folder a page: route, present, view. */
import type { FastifyPluginAsync } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { inspection } from '../inspection/route.ts'
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
import { countyOverview } from './county-overview/route.ts'
import { decision } from './decision/route.ts'
import { documentPages } from './documents/route.ts'
import { formPages } from './forms/route.ts'
import { home } from './home/route.ts'
import { importPages } from './imports/route.ts'
import { inspections } from './inspections/route.ts'
import { rememberLanguage } from './language.ts'
import { letter } from './letter/route.ts'
import { letterCheck } from './letter-check/route.ts'
import { notificationPages } from './notifications/route.ts'
import { parcel } from './parcel/route.ts'
import { patterns } from './patterns/route.ts'
import { permitPages } from './permit/route.ts'
import { answerFaultAsPage } from './problem/answer.ts'
import { queue } from './queue/route.ts'
import { reconciliation } from './reconciliation/route.ts'
import { rules } from './rules/route.ts'
import { rulesTrial } from './rules-trial/route.ts'
import { search } from './search/route.ts'
import { signIn } from './sign-in/route.ts'
import { systemPages } from './systems/route.ts'

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
  systemPages,
  decision,
  permitPages,
  letter,
  notificationPages,
  letterCheck,
  reconciliation,
  brief,
  inspection,
  inspections,
  countyOverview,
  patterns,
  rules,
  rulesTrial,
  importPages,
  documentPages,
  formPages,
]

export const pages: FastifyPluginAsync = async (app) => {
  app.setErrorHandler(answerFaultAsPage)
  app.addHook('onRequest', rememberLanguage)
  app.addHook('onRoute', (route) => {
    // The API description is about the API only.
    route.schema = { ...route.schema, hide: true }
  })
  // Only here: the API takes no forms, so a form of another site cannot reach it.
  app.addContentTypeParser(
    'application/x-www-form-urlencoded',
    { parseAs: 'string' },
    async (_: unknown, body: string) => Object.fromEntries(new URLSearchParams(body)),
  )
  await app.register(assets)
  for (const page of PAGES) await app.register(page)
}
