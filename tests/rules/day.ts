import { type PlainDate, plainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'

export const day = (text: string): PlainDate => must(plainDate(text))
