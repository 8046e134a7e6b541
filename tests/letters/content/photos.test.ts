import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chosenPhotos, picturesNamed, printPhotos } from '../../../src/letters/content/photos.ts'

const taken = fc.array(
  fc.record({ component: fc.constantFrom('tank 1', 'pit', 'well', null), id: fc.nat() }),
  { maxLength: 60 },
)

describe('the photos that a report has room for', () => {
  test('are as many as there is room for, none twice, by component, in the order they came', () => {
    fc.assert(
      fc.property(taken, fc.integer({ min: 1, max: 30 }), (photos, most) => {
        const chosen = chosenPhotos(photos, most)
        expect(new Set(chosen).size).toBe(Math.min(photos.length, most))
        const parts = chosen.map(({ component }) => component)
        expect(parts.filter((part, at) => part !== parts[at - 1])).toHaveLength(new Set(parts).size)
        for (const part of new Set(parts)) {
          const own = photos.filter(({ component }) => component === part)
          const kept = chosen.filter(({ component }) => component === part)
          expect(kept).toEqual(own.slice(0, kept.length))
        }
      }),
    )
  })

  test('leave no component out while another has two', () => {
    fc.assert(
      fc.property(taken, fc.integer({ min: 1, max: 30 }), (photos, most) => {
        const counts = [...Map.groupBy(chosenPhotos(photos, most), ({ component }) => component).values()]
        const parts = new Set(photos.map(({ component }) => component)).size
        if (counts.some((own) => own.length > 1)) expect(counts).toHaveLength(parts)
      }),
    )
  })
})

test('a photo is told with when it was taken and its whole hash; those left out are counted', () => {
  const takenHash = `${'a'.repeat(32)}${'b'.repeat(32)}`
  const photo = { component: null, takenAt: '2026-10-12T09:20:33-05:00', takenHash, printedHash: 'c' }
  expect(printPhotos([photo], 30)).toEqual({
    pictures: [
      {
        about: 'the whole site',
        taken: '2026-10-12 09:20',
        hash: ['a'.repeat(32), 'b'.repeat(32)],
        picture: 'c',
        alt: 'Photo of the whole site, taken 2026-10-12 09:20',
      },
    ],
    leftOut: '1 of 30 are shown; the county keeps all of them.',
  })
  expect(printPhotos([], 0)).toBeNull()
})

test('contents of before there were photos ask for none', () => {
  expect(picturesNamed({ photos: printPhotos([], 0) })).toEqual([])
  expect(picturesNamed({ frame: {} })).toEqual([])
})
