import { readdirSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { filesUnder, ROOT, textOf } from './source-files.ts'

/** Wordings that people misread or smile at, each with what Asfound says instead. */
const REPLACED: readonly (readonly [RegExp, string])[] = [
  [/\b(hand(s|ed|ing)?|send) (it |them |findings |an inspection )?in\b/, 'submit'],
  [/give or take/, '±'],
  [/\bput right\b/, 'fix'],
  [/\bmend(s|ed|ing)?\b/, 'fix, correct'],
  [/tell us no more|tell it no more/, 'stop notifications'],
  [/be told when/, 'get notified when'],
  [/\btold (here|once|since|this once)\b/, 'kept on the page; shown once'],
  [/pass(ed)? over/, 'skip'],
  [/read surely/, 'high confidence'],
  [/['“]look again/, 'check this'],
  [/open no more/, 'closed'],
  [/\b(programme|calliper|organisation|recognise|colour|centre|grey|catalogue)s?\b/, 'American spelling'],
  [/nobody has read it|not read yet by anybody/, 'source not yet verified'],
  [/\bwhoever looks after\b|looks after (the|an) (organization|office|department)/, 'administrator'],
  [/shut out|take (one|them|it) in\b|let (them )?back in/, 'remove access, add, restore access'],
  [/good for nothing/, 'revoked'],
  [/as good as always/, 'nearly always'],
  [/\b(e-mail)\b/, 'email'],
  [/square of dots|point a phone at/, 'scan the QR code'],
  [/to the first page|to the content/, 'Home; Skip to main content'],
  [/write down an? inspection/, 'start an inspection'],
  [/held against the (paper|scan)/, 'checked against the scan'],
  [/whoever carries it on/, 'maintainers'],
  [/asks? (it|every route) as everybody/, 'the access test calls it with every role'],
  [/(token|access|admission)s? (is|are|was|can be) withdrawn/, 'revoke, remove'],
  [/\bsecond step\b/, 'two-step sign-in'],
]

const documents = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(path.join(ROOT, 'docs')).map((name) => `docs/${name}`),
]
const stories = readdirSync(path.join(ROOT, 'src/cli/demonstration/stories')).map(
  (name) => `src/cli/demonstration/stories/${name}`,
)
const sources = [...filesUnder('src'), ...stories]

/** Names in code keep their hyphens and capitals, and are not read aloud: `second-step`, `secondStep`. */
test.each([...documents, ...sources])('%s says it in plain American English', (file) => {
  const found = textOf(file)
    .split('\n')
    .flatMap((line, at) =>
      REPLACED.filter(([pattern]) => new RegExp(pattern, 'i').test(line)).map(
        ([pattern, instead]) => `line ${at + 1}: ${line.match(new RegExp(pattern, 'i'))?.[0]} -> ${instead}`,
      ),
    )
  expect(found).toEqual([])
})
