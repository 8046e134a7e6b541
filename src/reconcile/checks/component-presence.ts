import { isOrAre, the, wasOrWere } from '../../records/naming.ts'
import { aboutPairing, firm, likely, seen } from '../about.ts'
import { check } from '../check.ts'
import { known, lacking } from '../fact.ts'

const REASONS = {
  buried: 'it is buried too deep',
  'paved-over': 'it is paved over',
  refused: 'access was refused',
  'no-time': 'there was no time',
  unsafe: 'it was unsafe to go on',
  other: 'see the note',
} as const

const METHOD_WORDS = {
  excavation: 'digging',
  probe: 'probing',
  camera: 'camera in the line',
  sonde: 'sonde',
  'metal-detector': 'metal detector',
  'ground-radar': 'ground radar',
  'seen-through-opening': 'looking through the opening',
} as const

/** Ways of looking after which absence is as good as seen: the place itself was laid open or looked into. */
const CONCLUSIVE = new Set(['excavation', 'camera', 'seen-through-opening'])

/**
 * Only a search with a stated method that did not find a thing makes it missing. Not reached and not looked for are
 * no evidence, and end as `cannot-tell` with the reason.
 */
export const componentPresence = check({
  id: 'component-presence',
  question: 'Is what the record shows in the ground?',
  raises: ['component-missing'],
  subjects: ({ pairings, findings }) => (findings ? pairings : []),
  about: aboutPairing,
  facts: {
    search: ({ built, found }, { findings }) => {
      if (!found || found.outcome === 'not-looked-for')
        return lacking(`the inspection did not look for ${the(built.label)}`)
      if (found.outcome === 'not-reached') {
        return lacking(
          `${the(built.label)} ${wasOrWere(built.label)} not reached: ${REASONS[found.notReachedBecause ?? 'other']}`,
        )
      }
      const how = found.searchedBy.map((method) => METHOD_WORDS[method]).join(', ')
      const within = found.searchedWithin ? ` within ${found.searchedWithin.asWritten}` : ''
      const said = found.outcome === 'found' ? 'found' : `searched for by ${how}${within}, not found`
      return known(found, seen(found, findings?.id ?? '', built.label, said, how || 'seen'))
    },
  },
  rules: {},
  decide({ search }, _, { built }) {
    const were = wasOrWere(built.label)
    if (search.outcome === 'found') {
      return {
        verdict: 'agrees',
        raises: null,
        because: `${the(built.label)} ${were} found`,
        certainty: firm('seen by the inspector'),
      }
    }
    const how = search.searchedBy.map((method) => METHOD_WORDS[method]).join(' and ')
    const because = `${the(built.label)} ${isOrAre(built.label)} on record, ${were} searched for by ${how}${search.searchedWithin ? ` within ${search.searchedWithin.asWritten} of the expected place` : ''}, and ${were} not found`
    return search.searchedBy.some((method) => CONCLUSIVE.has(method))
      ? {
          verdict: 'differs',
          raises: 'component-missing',
          because,
          certainty: firm('the place itself was laid open or looked into'),
        }
      : {
          verdict: 'differs',
          raises: 'component-missing',
          because,
          certainty: likely('searched from the surface only: a buried thing can escape that'),
        }
  },
})
