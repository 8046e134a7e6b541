import type { EntryIssue } from '../../../reading/entry/issues.ts'
import type { FormFault } from '../../../words/form-faults.ts'
import { isAnswered } from './entry.ts'
import type { Faults } from './read.ts'
import type { InspectionForm } from './typed.ts'

/**
 * What the service would not take of a whole inspection, at the step and the field where it is typed. A part on record of
 * which nothing was said has no place in the record yet: each of those is asked for.
 */
export function placedFaults(issues: readonly EntryIssue[], { parts }: InspectionForm): Faults {
  const answered = parts.filter(isAnswered)
  const faults: Record<string, Record<string, FormFault>> = {}
  const add = (step: string, field: string, fault: FormFault): void => {
    faults[step] = { [field]: fault, ...faults[step] }
  }
  for (const { pointer, message } of issues) {
    const says = { why: 'says', says: message } as const
    const [, list, at, field] = pointer.split('/')
    const part = list === 'components' && at !== undefined ? answered[Number(at)] : undefined
    if (part) add(part.id, field ?? 'outcome', says)
    else if (list === 'components' && at === '-') {
      add('review', 'notes', says)
      for (const { id } of parts.filter((it) => !isAnswered(it))) add(id, 'outcome', { why: 'no-outcome' })
    } else if (list === 'components') add('review', 'notes', says)
    else add('start', list ?? '', says)
  }
  return faults
}
