import sharp from 'sharp'

type Notes = {
  readonly taken?: string
  readonly offset?: string
  readonly gps?: boolean
  readonly orientation?: number
}

/** A picture with what a phone writes beside it: half blue, half brown, so that its turn can be told. */
export function pictureWith(
  { taken = '2026:10:12 09:14:03', offset = '-05:00', gps = true, orientation = 1 }: Notes = {},
  format: 'jpeg' | 'png' | 'webp' = 'jpeg',
  [width, height]: readonly [number, number] = [320, 240],
): Promise<Buffer> {
  const half = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="${width}" height="${height}" fill="#0b4f8a"/><rect width="${width / 2}" height="${height}" fill="#7a2e0e"/></svg>`,
  )
  return sharp(half)
    .flatten({ background: '#ffffff' })
    .withExif({
      IFD0: { Make: 'Invented', Copyright: 'nobody' },
      IFD2: { DateTimeOriginal: taken, ...(offset ? { OffsetTimeOriginal: offset } : {}) },
      ...(gps
        ? {
            IFD3: {
              GPSLatitudeRef: 'N',
              GPSLatitude: '41/1 30/1 0/1',
              GPSLongitudeRef: 'W',
              GPSLongitude: '90/1 7/1 0/1',
            },
          }
        : {}),
    })
    .withMetadata({ orientation })
    .toFormat(format)
    .toBuffer()
}
