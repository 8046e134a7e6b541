/** Words that name no corner among others. */
const FILLERS = new Set(
  'of the a at to house home dwelling residence building bldg corner cor crnr main'.split(' '),
)
const SPELLINGS: { readonly [word: string]: string } = {
  back: 'rear',
  behind: 'rear',
  lt: 'left',
  rt: 'right',
  n: 'north',
  s: 'south',
  e: 'east',
  w: 'west',
  ne: 'north east',
  nw: 'north west',
  se: 'south east',
  sw: 'south west',
  northeast: 'north east',
  northwest: 'north west',
  southeast: 'south east',
  southwest: 'south west',
}

/**
 * Do two names mean one house corner? By what they say of it, in any order: "rear left corner of house" and "Left rear",
 * "NE corner" and "northeast cor. of dwelling". Names of nothing but fillers are compared as they stand.
 */
export const sameCorner = (a: string, b: string): boolean => meaning(a) === meaning(b)

function meaning(name: string): string {
  const words = name.toLowerCase().match(/[a-z0-9]+/g) ?? []
  const telling = words
    .filter((word) => !FILLERS.has(word))
    .flatMap((word) => (SPELLINGS[word] ?? word).split(' '))
  return (telling.length > 0 ? telling.toSorted() : words).join(' ')
}
