import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { exifTime } from '../../../src/files/pictures/exif-time.ts'
import { readPicture } from '../../../src/files/pictures/read-picture.ts'
import { withoutNotes } from '../../../src/files/pictures/without-notes.ts'
import { pictureWith } from '../../support/pictures.ts'

const pixels = (bytes: Uint8Array) => sharp(bytes).raw().toBuffer()
const FORMATS = ['jpeg', 'png', 'webp'] as const

describe('a picture without its notes', () => {
  test.each(FORMATS)('%s: no note is left, and the image is the same to the pixel', async (format) => {
    const whole = await pictureWith({}, format)
    const plain = withoutNotes(whole)!
    const told = await sharp(plain).metadata()
    expect([told.exif, told.xmp, told.iptc, told.comments]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ])
    expect(Buffer.from(plain).includes('Invented')).toBe(false)
    expect(await pixels(plain)).toEqual(await pixels(whole))
    expect(withoutNotes(plain)).toEqual(plain)
  })

  test('the color profile stays, for it is part of the image', async () => {
    const whole = await sharp(await pictureWith())
      .withIccProfile('p3')
      .jpeg()
      .toBuffer()
    expect((await sharp(withoutNotes(whole)!).metadata()).icc).toBeDefined()
  })

  test('a progressive picture, and one with restarts, keep every scan', async () => {
    for (const options of [{ progressive: true }, { optimiseScans: true, progressive: true }]) {
      const whole = await sharp(await pictureWith())
        .keepMetadata()
        .jpeg(options)
        .toBuffer()
      expect(await pixels(withoutNotes(whole)!)).toEqual(await pixels(whole))
    }
  })

  test('what is hidden behind the end goes too: phones put films and depth maps there', async () => {
    const whole = await pictureWith()
    const plain = withoutNotes(Buffer.concat([whole, Buffer.from('GPS 41.5 -90.1')]))!
    expect(Buffer.from(plain).includes('GPS 41.5')).toBe(false)
  })

  test('what is no picture, or is cut off, is not taken apart', async () => {
    const whole = await pictureWith()
    expect(withoutNotes(whole.subarray(0, 300))).toBeNull()
    expect(withoutNotes(Buffer.from('hello'))).toBeNull()
    expect(withoutNotes(new Uint8Array())).toBeNull()
  })
})

describe('when it was taken', () => {
  const timeOf = async (notes: Parameters<typeof pictureWith>[0]) =>
    exifTime((await sharp(await pictureWith(notes)).metadata()).exif!)

  test('by the camera’s clock, with its offset where there is one', async () => {
    expect(await timeOf({})).toBe('2026-10-12T09:14:03-05:00')
    expect(await timeOf({ offset: '' })).toBe('2026-10-12T09:14:03')
  })

  test('a clock that can’t be is none', async () => {
    expect(await timeOf({ taken: '2026:13:45 99:99:99' })).toBeNull()
    expect(await timeOf({ taken: '    :  :     :  :  ' })).toBeNull()
  })

  test('notes cut off anywhere, or with any byte changed, are read without a fault', async () => {
    const exif = (await sharp(await pictureWith()).metadata()).exif!
    for (let at = 0; at < exif.length; at++) {
      exifTime(exif.subarray(0, at))
      const changed = Buffer.from(exif)
      changed[at] = changed[at]! ^ 0xff
      exifTime(changed)
    }
  })
})

/** 6 kB that draw ten to the power of nine rectangles. */
const drawingOfDrawings = (): Buffer => {
  const levels = Array.from({ length: 9 }, (_, level) => {
    const below = level === 0 ? '<rect width="9" height="9"/>' : `<use href="#g${level - 1}"/>`.repeat(10)
    return `<g id="g${level}">${below}</g>`
  })
  return Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="3000" height="3000">${levels.join('')}</svg>`,
  )
}

describe('a file that would keep an image library busy', () => {
  test('is refused by its first bytes, however many come at once, and nothing opens it', async () => {
    const begun = performance.now()
    const read = await Promise.all(
      Array.from({ length: 8 }, () => readPicture(drawingOfDrawings(), true, 'a firm')),
    )
    expect(read.every((it) => !it.ok && /not a supported image/.test(it.error))).toBe(true)
    expect(performance.now() - begun).toBeLessThan(500)
  })

  test('is not opened as something else where it begins as a picture', async () => {
    for (const head of [
      [0xff, 0xd8, 0xff, 0xe0],
      [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ]) {
      const disguised = Buffer.concat([Buffer.from(head), drawingOfDrawings()])
      expect(await readPicture(disguised, true, 'a firm')).toMatchObject({
        error: expect.stringMatching(/damaged/),
      })
    }
  })

  test('takes its memory in the process that opens it, and none here', async () => {
    const wide = await sharp({ create: { width: 7000, height: 7000, channels: 4, background: '#fff8' } })
      .png()
      .toBuffer()
    const before = process.memoryUsage().rss
    let most = before
    const looking = setInterval(() => {
      most = Math.max(most, process.memoryUsage().rss)
    }, 5)
    const read = await readPicture(wide, true, 'a firm')
    clearInterval(looking)
    expect(read.ok).toBe(true)
    expect((most - before) / 1_048_576).toBeLessThan(120)
  })
})

describe('reading a photo as it came in', () => {
  test.each(FORMATS)('%s: what others get is upright, and nothing but the image', async (format) => {
    const picture = await readPicture(await pictureWith({ orientation: 6 }, format), true, 'a firm')
    if (!picture.ok) throw new Error(picture.error)
    const { shown, width, height, orientation, takenAt, original, type } = picture.value
    expect({ type, width, height, orientation, takenAt }).toEqual({
      type: `image/${format}`,
      width: 240,
      height: 320,
      orientation: 6,
      takenAt: '2026-10-12T09:14:03-05:00',
    })
    const told = await sharp(shown).metadata()
    expect([told.format, told.exif, told.orientation]).toEqual(['jpeg', undefined, undefined])
    // Turned by a quarter, the brown left half is on top.
    const { data } = await sharp(shown).raw().toBuffer({ resolveWithObject: true })
    expect(data[0]).toBeGreaterThan(100)
    expect((await sharp(original).metadata()).exif).toBeDefined()
  })

  test('a place that nobody allowed is not kept, not even in the original', async () => {
    const picture = await readPicture(await pictureWith(), false, 'a firm')
    if (!picture.ok) throw new Error(picture.error)
    expect((await sharp(picture.value.original).metadata()).exif).toBeUndefined()
    expect(picture.value.takenAt).toBe('2026-10-12T09:14:03-05:00')
  })

  test('larger than a screen is brought to a screen; for a list, to a stamp', async () => {
    const picture = await readPicture(await pictureWith({}, 'jpeg', [4032, 3024]), true, 'a firm')
    if (!picture.ok) throw new Error(picture.error)
    expect([picture.value.width, picture.value.height]).toEqual([2048, 1536])
    const { small } = picture.value
    expect((await sharp(small).metadata()).width).toBe(320)
    expect(small.length).toBeLessThan(20_000)
  })

  test.each([
    ['text under a picture’s name', Buffer.from('GIF? no: text'), /not a supported image/],
    [
      'a drawing',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'),
      /not a supported image/,
    ],
    ['nothing', Buffer.alloc(0), /is empty/],
  ] as const)('%s is refused', async (_, bytes, says) => {
    const picture = await readPicture(bytes, true, 'a firm')
    expect(picture).toEqual({ ok: false, error: expect.stringMatching(says) })
  })

  test('one that is cut off, one that moves and one too large are refused', async () => {
    const whole = await pictureWith({}, 'jpeg', [1600, 1200])
    expect(await readPicture(whole.subarray(0, whole.length / 2), true, 'a firm')).toMatchObject({
      error: /damaged/,
    })
    const first = await pictureWith()
    const second = await sharp(first).flop().toBuffer()
    const moving = await sharp([first, second], { join: { animated: true } })
      .webp({ loop: 0, delay: [100, 100] })
      .toBuffer()
    expect(await readPicture(moving, true, 'a firm')).toMatchObject({
      error: expect.stringMatching(/animated/),
    })
    const wide = await sharp({ create: { width: 9000, height: 6000, channels: 3, background: '#fff' } })
      .png()
      .toBuffer()
    expect(await readPicture(wide, true, 'a firm')).toMatchObject({
      error: expect.stringMatching(/50 million/),
    })
  })
})
