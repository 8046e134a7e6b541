/** The pure floors on the phone: reading, reconciling. Apart from the rest, so that the form is there before them. */
import './jitless.ts'

export { bookOf } from '../../pages/visit/file.ts'
export { readForm } from '../../pages/visit/form/read.ts'
export { readableRecord } from '../../pages/visit/form/readable.ts'
export { liveOf } from '../../pages/visit/live/live-of.ts'
export { reckon } from '../../pages/visit/live/reckon.ts'
