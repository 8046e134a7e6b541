import { expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { VOICES } from '../../src/words/agent/status.ts'
import { SEVERITY_WORDS, titleOf } from '../../src/words/titles.ts'
import { BEFORE } from './before.ts'
import { play } from './play.ts'

const book = must(await loadRuleBook())
const { word } = VOICES.en

/** The first sentence of what a story tells. */
const gist = (tells: string): string => /^.*?[.:](?=\s|$)/s.exec(tells)?.[0].replace(/[:]$/, '.') ?? tells

const rows = readStories().flatMap(({ slug, tells, asOf, parcels }) =>
  parcels.map((file, at) => {
    const name = parcels.length > 1 ? `${slug} ${at + 1}` : slug
    const { reconciliation, status } = play(file, asOf, book)
    const open = reconciliation.discrepancies
      .filter(({ severity }) => severity !== 'note')
      .map(
        ({ severity, kind, outcome }) =>
          `${SEVERITY_WORDS[severity].word}: ${titleOf(kind, outcome.subject, outcome.reason)}`,
      )
    const before = BEFORE[name]
    return `| ${name} | ${gist(tells)} | ${before ? word[before as keyof typeof word] : '(new)'} | **${word[status.word]}** | ${[...new Set(open)].join('; ')} |`
  }),
)

const PAGE = `# The stories, and what Asfound says of each

Every story is a parcel of the invented Quillback County, in \`src/cli/demonstration/stories/\`, with the answer that the trade
would give and its reasoning beside it. The demonstration loads them; \`tests/corpus/corpus.test.ts\` holds each answer. "0.1.0" is
what that release said of the same parcel, without the facts that it had no field for. This page is made by a test
(\`npm test -- tests/corpus/stories-page.test.ts -u\`).

| story | what happened | 0.1.0 | now | what is open |
| --- | --- | --- | --- | --- |
${rows.join('\n')}
`

test('the page of stories says what is answered', async () => {
  await expect(PAGE).toMatchFileSnapshot('../../docs/stories.md')
})
