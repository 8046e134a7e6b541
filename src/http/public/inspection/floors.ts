/** The pure floors on the phone: reading, reconciling. Apart from the rest, so that the form is there before them. */
import './jitless.ts'

export { bookOf } from '../../pages/inspection/file.ts'
export { readForm } from '../../pages/inspection/form/read.ts'
export { readableRecord } from '../../pages/inspection/form/readable.ts'
export { liveOf } from '../../pages/inspection/live/live-of.ts'
export { reckon } from '../../pages/inspection/live/reckon.ts'
