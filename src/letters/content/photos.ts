/** A photo of the inspection, with the picture that is printed. Hashes are SHA-256, hex. */
export type PhotoInReport = {
  /** The name of its component in the findings; null for one of the whole site. */
  readonly component: string | null
  /** ISO 8601, as the clock of whoever took it read; null where nothing says when. */
  readonly takenAt: string | null
  /** Of the picture as it was taken, which the county keeps. */
  readonly takenHash: string
  readonly printedHash: string
}

export type PhotosPrinted = {
  readonly pictures: readonly {
    readonly about: string
    readonly taken: string | null
    /** In two halves: no line holds the whole. */
    readonly hash: readonly [string, string]
    readonly picture: string
    readonly alt: string
  }[]
  /** What is not shown, in words; null where all is. */
  readonly leftOut: string | null
}

/** Twelve sheets of two by two would be a book; and with about 100 kB each a report stays under 3 MB. */
export const MOST_PHOTOS = 24

/** Which of an inspection's photos are printed where not all can be: the first of each component, then the second, … */
export function chosenPhotos<P extends { readonly component: string | null }>(
  photos: readonly P[],
  most = MOST_PHOTOS,
): readonly P[] {
  const rank = new Map<P, number>()
  const count = new Map<string | null, number>()
  for (const photo of photos) {
    const before = count.get(photo.component) ?? 0
    rank.set(photo, before)
    count.set(photo.component, before + 1)
  }
  const chosen = new Set([...photos].sort((one, other) => rank.get(one)! - rank.get(other)!).slice(0, most))
  const order = [...count.keys()]
  return [...chosen].sort(
    (one, other) =>
      order.indexOf(one.component) - order.indexOf(other.component) || rank.get(one)! - rank.get(other)!,
  )
}

/** Null where the inspection has none. `all`: how many it has. */
export function printPhotos(photos: readonly PhotoInReport[], all: number): PhotosPrinted | null {
  if (photos.length === 0) return null
  return {
    pictures: photos.map(({ component, takenAt, takenHash, printedHash }) => {
      const about = component ?? 'the whole site'
      const taken = takenAt === null ? null : takenAt.slice(0, 16).replace('T', ' ')
      return {
        about,
        taken,
        hash: [takenHash.slice(0, 32), takenHash.slice(32)],
        picture: printedHash,
        alt: `Photo of ${about}${taken === null ? '' : `, taken ${taken}`}`,
      }
    }),
    leftOut:
      all > photos.length ? `${photos.length} of ${all} are shown; the county keeps all of them.` : null,
  }
}

/** The pictures that a kept content asks for, by hash; none where it asks for none, or is of before there were any. */
export const picturesNamed = (content: unknown): readonly string[] =>
  (content as { readonly photos?: PhotosPrinted | null }).photos?.pictures.map(({ picture }) => picture) ?? []
