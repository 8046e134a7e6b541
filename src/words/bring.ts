/** One thing to bring, with the fact about this parcel that calls for it. */
export type Bring =
  | { readonly tool: 'tape'; readonly longestFt: number | null }
  | { readonly tool: 'shovel'; readonly deepestFt: number | null }
  | { readonly tool: keyof typeof TOOLS }

type Told = { readonly what: string; readonly because: string }

const TOOLS = {
  'inside-tape': {
    what: 'a metal tape for the inside, a rule and a sounding rod',
    because: 'capacity and level are to be measured',
  },
  'gas-meter': { what: 'a four-gas meter', because: 'a tank or chamber is to be opened' },
  camera: { what: 'a line camera with a sonde and its receiver', because: 'lines are to be seen and traced' },
  boards: {
    what: 'boards to stand on beside the tank',
    because: 'a steel tank is on record: its top may not carry a person',
  },
  lock: { what: 'a lock for the pump circuit', because: 'a pump chamber is on record' },
  screws: { what: 'locks or screws for the covers', because: 'every cover is secured before you leave' },
} as const satisfies { readonly [tool: string]: Told }

/** A cover that lies deeper than this is not reached with a short handle: common practice. */
const DEEP_FT = 2
const TAPE_STEP_FT = 25

/** What to bring and why, each as a phrase. */
export function bringWords(it: Bring): Told {
  switch (it.tool) {
    case 'tape':
      return it.longestFt === null
        ? { what: 'a 100 ft tape', because: 'to tie in what you find' }
        : {
            what: `a tape of at least ${Math.ceil(it.longestFt / TAPE_STEP_FT) * TAPE_STEP_FT} ft`,
            because: `the longest tie on record is ${it.longestFt.toFixed(1)} ft`,
          }
    case 'shovel':
      return it.deepestFt === null
        ? { what: 'a probe and a shovel', because: 'no depth to the covers is on record' }
        : {
            what: it.deepestFt > DEEP_FT ? 'a probe and a long-handled shovel' : 'a probe and a shovel',
            because: `covers lie to ${it.deepestFt.toFixed(1)} ft below grade on record`,
          }
    default:
      return TOOLS[it.tool]
  }
}
