import { takingTurns } from '../../../base/turns.ts'

/** A letter is numbered, printed and kept in one transaction: those under way leave connections for everybody else. */
export const lettersInTurn = takingTurns({
  what: 'letters to be printed',
  atOnce: 2,
  each: 1,
  mostWaiting: 100,
})
