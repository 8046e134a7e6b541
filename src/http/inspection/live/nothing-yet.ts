import type { Live } from './live.ts'

export const NOTHING_YET: Live = { holds: null, differences: [], agrees: [], again: null, next: null }
