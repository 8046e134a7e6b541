import { expect, test } from 'vitest'
import { type Step, worked } from '../../src/measure/step.ts'

const step: Step = { says: 'a sum', formula: 'a + b', numbers: '1 + 2', result: '3' }

test('steps are written when they are read, and once', () => {
  let times = 0
  const answer = worked(3, () => {
    times++
    return [step]
  })
  expect(times).toBe(0)
  expect(answer.steps).toEqual([step])
  expect(answer.steps).toBe(answer.steps)
  expect(times).toBe(1)
})

test('to whoever holds it they are a plain property: sent, spread, cloned, compared', () => {
  const answer = () => worked(3, () => [step])
  const plain = { value: 3, steps: [step] }
  expect(JSON.parse(JSON.stringify(answer()))).toEqual(plain)
  expect({ ...answer() }).toEqual(plain)
  expect(structuredClone(answer())).toEqual(plain)
  expect(Object.keys(answer())).toEqual(['value', 'steps'])
  expect(answer()).toEqual(answer())
  expect(answer()).not.toEqual(worked(3, () => [{ ...step, result: '4' }]))
})
