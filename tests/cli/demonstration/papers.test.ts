import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { COUNTY } from '../../../src/cli/demonstration/enrol.ts'
import { PAPERS } from '../../../src/cli/demonstration/load-papers.ts'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { loadRuleBook } from '../../../src/files/rule-packs.ts'
import { type PermitEntry, permitEntry } from '../../../src/reading/entry/permit.ts'
import type { PageWords } from '../../../src/reading/page-words.ts'
import type { ProposedPermit } from '../../../src/reading/proposal.ts'
import { proposePermits } from '../../../src/reading/propose.ts'
import { readDocument } from '../../../src/scan/read-document.ts'
import { play } from '../../corpus/play.ts'

const folder = new URL('../../../src/cli/demonstration/papers/', import.meta.url)
const parcels = readStories().flatMap((story) => story.parcels.map(({ parcel }) => parcel.number))

test('every paper in the folder is submitted, for a parcel that is there', () => {
  expect(readdirSync(folder).sort()).toEqual(PAPERS.map(({ file }) => file).sort())
  expect(PAPERS.filter(({ parcel }) => !parcels.includes(parcel))).toEqual([])
})

async function proposed(file: string): Promise<readonly ProposedPermit[]> {
  const pages: PageWords[] = []
  const reading = await readDocument(
    fileURLToPath(new URL(file, folder)),
    {},
    {
      onPage: async (page) => {
        if (page.state === 'read') pages.push(page.words)
      },
    },
  )
  expect(reading.outcome).toBe('read')
  return proposePermits(pages, COUNTY.parcelFormat)
}

describe('what a reading proposes of each', () => {
  const numbers: Record<string, readonly string[]> = {
    'card-of-1966.pdf': ['66-205'],
    'letter-of-1981.pdf': ['81-094'],
    'form-of-1988.pdf': ['88-0519'],
    'two-permits-of-one-parcel.pdf': ['79-412', '2001-0233'],
  }
  test.each(PAPERS)('$file', async ({ file, parcel }) => {
    const permits = await proposed(file)
    expect(permits.map(({ entry }) => entry.number)).toEqual(numbers[file])
    for (const { parcelNumber } of permits) expect(parcelNumber?.value).toBe(parcel)
  })
})

test('the card, once confirmed, is the record of the system that was found without one', async () => {
  const [card] = await proposed('card-of-1966.pdf')
  const story = readStories().find(({ slug }) => slug === 'no-paper-but-a-system')!
  const permit = { typed: card!.entry as PermitEntry, record: permitEntry.parse(card!.entry) }
  const file = { ...story.parcels[0]!, permits: [permit] }
  const { status, reconciliation } = play(file, story.asOf, must(await loadRuleBook()))
  expect(status.word).toBe('matches')
  expect(reconciliation.outcomes.find(({ check }) => check === 'position')).toMatchObject({
    verdict: 'agrees',
  })
})
