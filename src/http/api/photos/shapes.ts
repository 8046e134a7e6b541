import { z } from 'zod'
import { PICTURE_TYPES } from '../../../files/pictures/picture-type.ts'
import type { Photo } from '../../../store/photos.ts'
import { id, instant } from '../shapes/basics.ts'

export const photo = z
  .object({
    id,
    findings: id,
    component: z
      .string()
      .nullable()
      .meta({ description: 'The name of its component; null for a photo of the site' }),
    hash: z.string().meta({ description: 'SHA-256 of the picture as it is kept' }),
    mediaType: z.enum([PICTURE_TYPES.jpeg, PICTURE_TYPES.png, PICTURE_TYPES.webp]),
    bytes: z.number(),
    width: z.number().meta({ description: 'Of the served image, pixels' }),
    height: z.number(),
    orientation: z
      .number()
      .meta({ description: 'How the camera was held (Exif 0112); the served image is upright' }),
    takenAt: z
      .string()
      .nullable()
      .meta({ description: 'ISO 8601; without an offset when it comes from a camera’s clock' }),
    place: z
      .object({ lat: z.number(), lon: z.number(), radiusFt: z.number().nullable() })
      .nullable()
      .meta({ description: 'Only where whoever took it allowed it' }),
    addedAt: instant,
  })
  .meta({ id: 'Photo', description: 'A photo of an inspection' })

export const presentPhoto = (it: Photo): z.output<typeof photo> => ({
  id: it.id,
  findings: it.findings,
  component: it.component,
  hash: it.contentHash,
  mediaType: it.mediaType,
  bytes: it.bytes,
  width: it.width,
  height: it.height,
  orientation: it.orientation,
  takenAt: it.takenAt,
  place: it.place && { ...it.place },
  addedAt: it.addedAt.toISOString(),
})
