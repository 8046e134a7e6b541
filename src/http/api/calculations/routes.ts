import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { calculateAbsorption } from '../../../operations/calculations/absorption-area.ts'
import { calculateCodeCapacity } from '../../../operations/calculations/code-capacity.ts'
import { calculateSolids } from '../../../operations/calculations/solids.ts'
import { calculateTieLocation } from '../../../operations/calculations/tie-location.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { absorptionAnswer, absorptionBody, presentAbsorption } from './absorption-area.ts'
import { codeCapacityAnswer, codeCapacityBody, presentCodeCapacity } from './code-capacity.ts'
import { presentSolids, solidsAnswer, solidsBody } from './solids.ts'
import { answerCapacity, presentCapacity, tankCapacityAnswer, tankCapacityBody } from './tank-capacity.ts'
import { askedTieLocation, presentTieLocation, tieLocationAnswer, tieLocationBody } from './tie-location.ts'

const config = { access: ALL_ROLES }
const tags = ['Calculations']

/** One calculation each, with its steps; nothing is stored. */
export const calculations: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/calculations/tank-capacity',
    {
      config,
      schema: {
        summary: 'Capacity of a tank, with its uncertainty',
        tags,
        operationId: 'calculateTankCapacity',
        body: tankCapacityBody,
        response: { 200: tankCapacityAnswer },
      },
    },
    async ({ body }) => presentCapacity(answered(answerCapacity(body))),
  )

  app.post(
    '/calculations/code-capacity',
    {
      config,
      schema: {
        summary: 'The minimum capacity that a code required on a day',
        tags,
        operationId: 'calculateCodeCapacity',
        body: codeCapacityBody,
        response: { 200: codeCapacityAnswer },
      },
    },
    async ({ context, body: { on, bedrooms, flowGpd, ...rest } }) =>
      presentCodeCapacity(
        answered(
          calculateCodeCapacity(context, {
            ...rest,
            on: on ?? null,
            bedrooms: bedrooms ?? null,
            flowGpd: flowGpd ?? null,
          }),
        ),
      ),
  )

  app.post(
    '/calculations/tie-location',
    {
      config,
      schema: {
        summary: 'Where two ties put a thing',
        tags,
        operationId: 'calculateTieLocation',
        body: tieLocationBody,
        response: { 200: tieLocationAnswer },
      },
    },
    async ({ body }) => presentTieLocation(answered(calculateTieLocation(askedTieLocation(body)))),
  )

  app.post(
    '/calculations/absorption-area',
    {
      config,
      schema: {
        summary: 'Absorption area provided, compared with what a code required',
        tags,
        operationId: 'calculateAbsorptionArea',
        body: absorptionBody,
        response: { 200: absorptionAnswer },
      },
    },
    async ({ context, body: { shape, counts, required } }) => {
      const asked = required && {
        ...required,
        on: required.on ?? null,
        bedrooms: required.bedrooms ?? null,
        flowGpd: required.flowGpd ?? null,
        soil: required.soil ?? null,
      }
      return presentAbsorption(
        answered(calculateAbsorption(context, { shape, counts: counts ?? null, required: asked ?? null })),
      )
    },
  )

  app.post(
    '/calculations/solids',
    {
      config,
      schema: {
        summary: 'Whether scum and sludge require pumping',
        tags,
        operationId: 'calculateSolids',
        body: solidsBody,
        response: { 200: solidsAnswer },
      },
    },
    async ({ context, body: { on, nominalGal, readings, rules } }) =>
      presentSolids(
        answered(
          calculateSolids(context, {
            rules,
            on: on ?? null,
            nominalGal: nominalGal ?? null,
            readings: { ...EMPTY, ...readings },
          }),
        ),
      ),
  )
}

const EMPTY = {
  liquidDepth: undefined,
  sludgeThickness: undefined,
  scumThickness: undefined,
  scumTopAboveLiquid: undefined,
  scumBottomBelowLiquid: undefined,
  outletBottomBelowLiquid: undefined,
  outletTopAboveLiquid: undefined,
}
