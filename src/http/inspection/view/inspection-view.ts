import type { Html } from '../../pages/html.ts'
import { stepsOf } from '../sheet/steps.ts'
import { moreView } from './more-view.ts'
import { partView } from './part-view.ts'
import { reviewView } from './review-view.ts'
import type { InspectionShown } from './shown.ts'
import { startView } from './start-view.ts'

/** The step that is asked for; one that is not there is the first. */
export function inspectionView(shown: InspectionShown): Html {
  const steps = stepsOf(shown.sheet, shown.form)
  const step = steps.find(({ name }) => name === shown.step) ?? steps[0]!
  const there = { ...shown, step: step.name }
  switch (step.is) {
    case 'start':
      return startView(there)
    case 'part':
      return partView(there, step)
    case 'more':
      return moreView(there)
    case 'review':
      return reviewView(there)
  }
}
