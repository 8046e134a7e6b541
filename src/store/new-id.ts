import { V7Generator } from 'uuidv7'

const generator = new V7Generator()
// The most it takes. A clock that was set back makes ids of the time before until it has come there again: of ids it is
// the order that is used, never the time in them.
generator.setRollbackAllowance(2 ** 48 - 1)

/** A new id, UUID version 7 (RFC 9562): in one process each sorts after those made before it, whatever the clock does. */
export const newId = (): string => generator.generate().toString()
