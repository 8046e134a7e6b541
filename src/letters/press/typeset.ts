import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { NodeCompiler, type NodeError } from '@myriaddreamin/typst-ts-node-compiler'
import { Impossible, invariant } from '../../base/invariant.ts'
import type { LetterKind } from '../content/frame.ts'
import type { Printed, Sheet } from './sheet.ts'

const TEMPLATES: { readonly [K in LetterKind]: string } = {
  status: 'status-letter.typ',
  report: 'report.typ',
  brief: 'brief.typ',
}

/** Fonts as the packages bring them (SIL Open Font License 1.1); what they lack comes from the typesetter's own serif. */
const FONTS = [
  ['atkinson-hyperlegible-next', 'AtkinsonHyperlegibleNext', ['400Regular', '600SemiBold', '700Bold']],
  ['atkinson-hyperlegible-mono', 'AtkinsonHyperlegibleMono', ['400Regular', '700Bold']],
] as const

/** A folder that is not there: a template can name no file but those handed over here. */
const ROOT = '/letters'

/** How many prints a remembered part of a page stays without being used again. */
const KEEP_FOR = 8

/**
 * The typesetter. Text comes in as JSON and is never read as markup. It is native code that ends the whole process
 * where it meets text it can't shape: run it in a process of its own (`press.ts`), on text that went through
 * `printable`.
 *
 * `print` gives PDF/UA-1 (ISO 14289-1), the same bytes for the same sheet: no clock, no chance, no font of the machine.
 */
export function openTypesetter(): { readonly print: (sheet: Sheet) => Printed } {
  const compiler = NodeCompiler.create({ workspace: ROOT, fontArgs: [{ fontBlobs: fontFiles() }] })
  const folder = path.join(import.meta.dirname, 'templates')
  for (const name of readdirSync(folder)) {
    compiler.addSource(`${ROOT}/${name}`, readFileSync(path.join(folder, name), 'utf8'))
  }
  return {
    print: ({ kind, contents, mostPages, pictures = new Map() }) => {
      const photos = [...pictures].map(([hash, bytes]) => [`${ROOT}/photos/${hash}.jpg`, bytes] as const)
      for (const [place, bytes] of photos) compiler.mapShadow(place, Buffer.from(bytes))
      let printed: Printed | undefined
      for (const [at, content] of contents.entries()) {
        const compiled = compiler.compile({
          mainFileContent: `#include "${TEMPLATES[kind]}"`,
          inputs: { data: JSON.stringify(content) },
        })
        const fault = compiled.takeError()
        if (fault) throw new Impossible(`the ${kind} letter: ${said(compiler, fault)}`)
        const document = compiled.result
        invariant(document, 'a compiled letter has a document')
        const pages = document.numOfPages
        const last = at === contents.length - 1
        if (!last && mostPages !== null && pages > mostPages) continue
        printed = { pdf: compiler.pdf(document, { pdfStandard: 'ua-1' }), pages, content: at }
        break
      }
      compiler.evictCache(KEEP_FOR)
      for (const [place] of photos) compiler.unmapShadow(place)
      invariant(printed, 'one of the contents was printed')
      return printed
    },
  }
}

const said = (compiler: NodeCompiler, fault: NodeError): string =>
  compiler
    .fetchDiagnostics(fault)
    .map(({ message, path: file }: { message: string; path: string }) => `${file}: ${message}`)
    .join('; ')

function fontFiles(): Buffer[] {
  const { resolve } = createRequire(import.meta.url)
  return FONTS.flatMap(([name, family, styles]) => {
    const folder = path.dirname(resolve(`@expo-google-fonts/${name}/package.json`))
    return styles.map((style) => readFileSync(path.join(folder, style, `${family}_${style}.ttf`)))
  })
}
