import { z } from 'zod'
import type { Region } from '../../../geometry/position/region.ts'
import { groundInWords } from '../../../words/ground.ts'

const place = z.object({ xFt: z.number(), yFt: z.number() })

export const regionShape = z
  .object({
    form: z.enum(['spot', 'strip', 'arc']),
    says: z.string().meta({ description: 'The ground to search, in words' }),
    lengthFt: z.number(),
    widthFt: z.number(),
    ends: z.array(place).meta({ description: 'The two ends of its middle line' }),
    outline: z.array(place),
    areaSqFt: z.number(),
    coverage: z.number().meta({ description: 'The chance that it holds the true place' }),
    acrossLine: z.boolean().meta({ description: 'It lies on both sides of the line through the corners' }),
  })
  .meta({ id: 'SearchArea', description: 'The ground that holds a place with the stated coverage' })

const asPlace = ([x, y]: readonly [number, number]) => ({ xFt: x, yFt: y })

export const presentRegion = (it: Region): z.output<typeof regionShape> => ({
  form: it.form,
  says: groundInWords(it),
  lengthFt: it.lengthFt,
  widthFt: it.widthFt,
  ends: it.ends.map(asPlace),
  outline: it.ring.map(asPlace),
  areaSqFt: it.areaSqFt,
  coverage: it.coverage,
  acrossLine: it.acrossLine,
})
