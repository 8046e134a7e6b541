import { expect, test } from 'vitest'
import { faultInWords, fieldInWords } from '../../src/words/field-fault.ts'

test.each([
  ['/number', 'is missing', 'Number is missing.'],
  ['/issuedOn', 'must be a date.', 'Issued date must be a date.'],
  ['/components/1/liquidDepth', 'write a length', 'Component 2, liquid depth: write a length.'],
  ['/permits/0/entry/kind', 'is missing', 'Permit 1, entry, kind is missing.'],
  ['', 'the file is empty', 'The file is empty.'],
])('%s %s', (pointer, message, words) => {
  expect(faultInWords(pointer, message)).toBe(words)
})

test('a name of data is not read aloud', () => {
  expect(fieldInWords('/percRateMpi')).toBe('Perc rate mpi')
  expect(fieldInWords('/components/0/inlet-baffle')).toBe('Component 1, inlet baffle')
})
