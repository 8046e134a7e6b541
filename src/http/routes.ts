import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { calculations } from './api/calculations/routes.ts'
import { counties } from './api/counties/routes.ts'
import { discrepancies } from './api/discrepancies/routes.ts'
import { pagePictures } from './api/documents/page-picture.ts'
import { documents } from './api/documents/routes.ts'
import { documentStanding } from './api/documents/standing.ts'
import { exportRoutes } from './api/exports/routes.ts'
import { findingsRoutes } from './api/findings/routes.ts'
import { forms } from './api/forms/routes.ts'
import { imports } from './api/imports/routes.ts'
import { inspectionBriefs } from './api/inspection-brief/routes.ts'
import { jobs } from './api/jobs/routes.ts'
import { letters } from './api/letters/routes.ts'
import { organizations } from './api/organizations/routes.ts'
import { parcels } from './api/parcels/routes.ts'
import { patterns } from './api/patterns/routes.ts'
import { people } from './api/people/routes.ts'
import { filingChanges } from './api/permits/filing-routes.ts'
import { permits } from './api/permits/routes.ts'
import { photos } from './api/photos/routes.ts'
import { reconciliations } from './api/reconciliations/routes.ts'
import { trial } from './api/reconciliations/trial.ts'
import { reruns } from './api/reruns/routes.ts'
import { rules } from './api/rules/routes.ts'
import { ruleTrials } from './api/rules/trial/routes.ts'
import { sessions } from './api/sessions/routes.ts'
import { subscriptions } from './api/subscriptions/routes.ts'
import { systems } from './api/systems/routes.ts'
import { tokens } from './api/tokens/routes.ts'

/** Every resource under /v1. Each is a plugin of its own in api/<resource>/. */
export const registerRoutes: FastifyPluginAsyncZod = async (app) => {
  const resources = [
    counties,
    parcels,
    systems,
    permits,
    filingChanges,
    documents,
    documentStanding,
    forms,
    pagePictures,
    findingsRoutes,
    photos,
    reconciliations,
    trial,
    discrepancies,
    calculations,
    rules,
    jobs,
    inspectionBriefs,
    letters,
    imports,
    exportRoutes,
    reruns,
    ruleTrials,
    subscriptions,
    patterns,
    organizations,
    people,
    tokens,
    sessions,
  ]
  for (const resource of resources) await app.register(resource)
}
