import { expect, test } from 'vitest'
import { asked, permit } from '../asked.ts'

const file = permit([{ tag: 'tank', kind: 'tank', capacity: '1000 gal' }])
const raised = (sludgeDepth: string) =>
  asked(
    [file],
    [
      {
        key: '88-1/tank',
        label: 'tank',
        kind: 'tank',
        outcome: 'found',
        opened: 'cover-off',
        liquidDepth: '48 in',
        levelAboveOutlet: { above: '0 in' },
        sludgeDepth,
        scumThickness: '4 in',
      },
    ],
    { ground: 'dry' },
  )
    .discrepancies.filter(({ kind }) => kind === 'solids-high')
    .map(({ severity, act }) => [severity, act])

/** A quarter of the depth is the trade's rule for pumping, half of it is common practice for "solids leave with the flow". */
test('a tank half full of solids is not a note that asks nothing of anybody', () => {
  expect(raised('4 in')).toEqual([])
  expect(raised('12 in')).toEqual([['note', 'pump-advised']])
  // 24 of 48 in is half to the inch: too close to say that it is more.
  expect(raised('20 in').map(([severity]) => severity)).toEqual(['note'])
  expect(raised('30 in')).toEqual([['review', 'pump']])
})
