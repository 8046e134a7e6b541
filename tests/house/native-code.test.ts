import { expect, test } from 'vitest'
import { filesUnder, importsOf } from './source-files.ts'

/**
 * Libraries that are given what strangers made: image decoders, a PDF reader, a typesetter. What goes wrong in one of
 * them ends a process of its own, which is bounded, and never the service.
 */
const IN_A_CHILD = ['sharp', 'pdfjs-dist', 'pdf-parse', 'onnxruntime-node']

test('what opens strangers’ files is loaded in child processes alone', () => {
  const elsewhere = filesUnder('src')
    .filter((file) => !file.includes('/child/'))
    .flatMap((file) =>
      importsOf(file)
        .filter(({ what, typeOnly }) => !typeOnly && IN_A_CHILD.includes(what))
        .map(({ what }) => `${file} imports ${what}`),
    )
  expect(elsewhere).toEqual([])
})

test('nothing but a child loads what a child is made of', () => {
  const loading = filesUnder('src')
    .filter((file) => !file.includes('/child/'))
    .flatMap((file) =>
      importsOf(file)
        .filter(({ what, typeOnly }) => !typeOnly && what.includes('/child/'))
        .map(({ what }) => `${file} imports ${what}`),
    )
  expect(loading).toEqual([])
})
