/** The pure reckoning on the phone: reading, reconciling. Apart from the rest, so that the form is there before them. */
import './jitless.ts'

export { bookOf } from '../file.ts'
export { readForm } from '../form/read.ts'
export { readableRecord } from '../form/readable.ts'
export { unsaidFaults } from '../form/unsaid.ts'
export { liveOf } from '../live/live-of.ts'
export { reckon } from '../live/reckon.ts'
