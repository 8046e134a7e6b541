import { z } from 'zod'
import { VERIFIED, weakest } from '../../../rules/citation.ts'
import { JURISDICTION_KINDS, type Pack } from '../../../rules/pack.ts'
import { GOVERNING_DATES, PARAMETER_NAMES, PARAMETERS } from '../../../rules/parameters.ts'
import { citation, day } from '../shapes/basics.ts'

const names = PARAMETER_NAMES as readonly [string, ...string[]]

const told = {
  pack: z.string().meta({ examples: ['quillback/code'] }),
  title: z.string(),
  jurisdiction: z.object({ kind: z.enum(JURISDICTION_KINDS), name: z.string() }),
  invented: z.boolean().meta({ description: 'Invented for the demonstration' }),
}

export const packInList = z
  .object({
    ...told,
    parameters: z.array(z.object({ name: z.enum(names), verified: z.enum(VERIFIED) })).meta({
      description: 'What it has rules for, each with its weakest citation',
    }),
  })
  .meta({ id: 'RulePackInList' })

export const pack = z
  .object({
    ...told,
    extends: z.array(z.string()),
    adoption: z.array(
      z.object({
        from: day.nullable(),
        until: day.nullable(),
        packs: z.array(z.string()),
        note: z.string(),
      }),
    ),
    parameters: z.array(
      z.object({
        name: z.enum(names),
        meaning: z.string(),
        governedBy: z.enum(GOVERNING_DATES).meta({ description: 'The day whose rules apply' }),
        entries: z.array(
          z.object({
            from: day.nullable(),
            until: day.nullable().meta({ description: 'The first day it no longer applies' }),
            value: z.unknown(),
            verified: z.enum(VERIFIED),
            citations: z.array(citation),
            note: z.string().nullable(),
            contradictions: z.array(z.object({ says: z.string(), citations: z.array(citation) })),
          }),
        ),
      }),
    ),
  })
  .meta({ id: 'RulePack', description: 'Rules of one jurisdiction on one topic' })

const presentTold = ({ pack: id, title, jurisdiction, invented }: Pack) => ({
  pack: id,
  title,
  jurisdiction: { ...jurisdiction },
  invented,
})

export const presentPackInList = (it: Pack): z.output<typeof packInList> => ({
  ...presentTold(it),
  parameters: it.parameters.map(({ name, entries }) => ({
    name,
    verified: weakest(entries.flatMap(({ citations }) => [...citations])),
  })),
})

export const presentPack = (it: Pack): z.output<typeof pack> => ({
  ...presentTold(it),
  extends: [...it.extends],
  adoption: it.adoption.map((adopted) => ({ ...adopted, packs: [...adopted.packs] })),
  parameters: it.parameters.map(({ name, governedBy, entries }) => ({
    name,
    meaning: PARAMETERS[name].meaning,
    governedBy,
    entries: entries.map(({ from, until, value, citations, note, contradictions }) => ({
      from,
      until,
      value,
      verified: weakest(citations),
      citations: citations.map((cited) => ({ ...cited })),
      note,
      contradictions: contradictions.map(({ says, citations: of }) => ({
        says,
        citations: of.map((cited) => ({ ...cited })),
      })),
    })),
  })),
})
