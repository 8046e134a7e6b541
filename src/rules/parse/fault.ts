/** Something wrong in a pack, where a person can put a finger on it. Lines and columns count from 1. */
export type Fault = {
  readonly file: string
  readonly line: number
  readonly col: number
  readonly message: string
}

export const faultInWords = ({ file, line, col, message }: Fault): string =>
  `${file}:${line}:${col}: ${message}`

export const inOrder = (faults: readonly Fault[]): readonly Fault[] =>
  [...faults].sort(
    (a, b) =>
      (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
      a.line - b.line ||
      a.col - b.col ||
      (a.message < b.message ? -1 : 1),
  )
