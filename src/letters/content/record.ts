import { inWords, type RecordedLine, type Sureness } from '../../brief/recorded.ts'
import type { AsBuiltComponent, PermitRef } from '../../records/as-built.ts'
import { printDay } from './day.ts'
import { readingInWords } from './evidence.ts'

/** What the file says of one thing, line by line, each with how sure it is and where it stands. */
export type RecordPrinted = {
  readonly about: string
  readonly lines: readonly {
    readonly what: string
    readonly says: string
    readonly sureness: Sureness
    readonly from: string
  }[]
}

type Components = readonly Pick<AsBuiltComponent, 'key' | 'label' | 'kind'>[]

export function printRecord(
  recorded: readonly RecordedLine[],
  components: Components,
): readonly RecordPrinted[] {
  const groups = new Map<string, RecordPrinted['lines'][number][]>()
  for (const { component, what, says, sureness, origins } of recorded) {
    const about = aboutIn(components, component, 'The system')
    const from = origins
      .map(({ permit, source }) => `permit ${permit.number}, ${readingInWords(source)}`)
      .join('; ')
    groups.set(about, [...(groups.get(about) ?? []), { what, says, sureness, from }])
  }
  return [...groups].map(([about, lines]) => ({ about, lines }))
}

/** A component by its name on the paper, with its kind where the name does not already say it. */
export function aboutIn(components: Components, key: string | null, other: string): string {
  const known = components.find((component) => component.key === key)
  if (!known) return key ?? other
  const kind = inWords(known.kind)
  return known.label.toLowerCase().includes(kind) ? known.label : `${known.label} (${kind})`
}

export const permitInWords = ({ number, kind, approvedOn }: PermitRef): string =>
  `permit ${number} (${kind}${approvedOn ? `, approved ${printDay(approvedOn)}` : ', no final approval'})`
