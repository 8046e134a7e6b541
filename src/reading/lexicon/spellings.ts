import { MEASURE_LABELS } from './measure-labels.ts'
import {
  ACTION_SPELLINGS,
  DECOYS,
  JOINTS,
  MATERIAL_SPELLINGS,
  MENTIONS,
  RULE_WORDS,
  SHAPE_SPELLINGS,
  UNIT_SPELLINGS,
  WORK_SPELLINGS,
} from './mentions.ts'
import { PERMIT_LABELS } from './permit-labels.ts'
import { type Ask, type Sense, type Spelling, squeezed } from './sense.ts'

const list = (spellings: string): string[] => spellings.split('|')

const asks = (table: Record<string, string>): Spelling[] =>
  Object.entries(table).flatMap(([ask, spellings]) =>
    list(spellings).map((written): Spelling => {
      const sense: Sense = {
        is: 'asks',
        ask: ask as Ask,
        ...(written.includes('~') ? { weak: true } : {}),
        ...(written.includes('<') ? { after: true } : {}),
      }
      return { text: squeezed(written), sense }
    }),
  )

const all = <K extends string>(
  table: Partial<Record<K, string>>,
  sense: (key: K, written: string) => Sense,
): Spelling[] =>
  (Object.entries(table) as [K, string][]).flatMap(([key, spellings]) =>
    list(spellings).map((written) => ({ text: squeezed(written), sense: sense(key, written) })),
  )

/** Every spelling that means something on a permit. */
export const SPELLINGS: readonly Spelling[] = [
  ...asks(PERMIT_LABELS),
  ...asks(MEASURE_LABELS),
  ...all(MENTIONS, (kind, written) => ({
    is: 'mention',
    kind,
    ...(written.includes('~') ? { weak: true } : {}),
  })),
  ...all(MATERIAL_SPELLINGS, (material) => ({ is: 'material', material })),
  ...all(SHAPE_SPELLINGS, (shape) => ({ is: 'shape', shape })),
  ...all(WORK_SPELLINGS, (kind) => ({ is: 'work', kind })),
  ...all(ACTION_SPELLINGS, (action) => ({ is: 'action', action })),
  ...all(UNIT_SPELLINGS, (unit) => ({ is: 'unit', unit })),
  ...list(DECOYS).map((text): Spelling => ({ text: squeezed(text), sense: { is: 'decoy' } })),
  ...list(JOINTS).map((text): Spelling => ({ text: squeezed(text), sense: { is: 'joint' } })),
  ...list(RULE_WORDS).map((text): Spelling => ({ text: squeezed(text), sense: { is: 'rule' } })),
]
