import type { LineDefect } from '../catalog/choices.ts'

/** What lets no sewage through, or lets it out. The others narrow a line, and go on to one of these (common practice). */
export const FAILING_DEFECTS: readonly LineDefect[] = ['break', 'collapse', 'blockage', 'leak']
