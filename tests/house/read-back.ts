import {
  type Expression,
  isBinaryExpression,
  isBindingElement,
  isCallExpression,
  isIdentifier,
  isNonNullExpression,
  isNoSubstitutionTemplateLiteral,
  isParenthesizedExpression,
  isPropertyAccessExpression,
  isRegularExpressionLiteral,
  isStringLiteral,
  isSwitchStatement,
  isTemplateExpression,
  isVariableDeclaration,
  type Node,
  SyntaxKind,
} from 'typescript/unstable/ast'
import type { Read } from './program.ts'

/** What asks a text whether it looks like something. */
const ASKING = [
  'startsWith',
  'endsWith',
  'includes',
  'indexOf',
  'match',
  'matchAll',
  'search',
  'test',
  'exec',
]
/** What our types call a sentence of ours. */
const SENTENCES = /^(says|sentence|message|detail|notice|fault|reason|title|because)$/

/** Where a program asks a sentence of ours what it means: `file:line`, with what is asked. */
export function readsBack({ file, source, types }: Read, phrases: ReadonlySet<string>): readonly string[] {
  const found: string[] = []
  const add = (node: Node): void => {
    const line = source.text.slice(0, node.getStart(source)).split('\n').length
    found.push(`${file}:${line}: ${node.getText(source).split('\n')[0]!.slice(0, 100)}`)
  }
  const isOurs = (text: Expression): boolean => isSentence(text, types)
  const walk = (node: Node): void => {
    if (isCallExpression(node) && isPropertyAccessExpression(node.expression)) {
      const { expression: on, name } = node.expression
      const [first] = node.arguments
      if (ASKING.includes(name.text)) {
        const [text, pattern] = name.text === 'test' || name.text === 'exec' ? [first, on] : [on, first]
        if (
          text &&
          ((isOurs(text) && !isSigns(pattern)) ||
            (pattern && isOpen(text, types) && isPhrase(pattern, phrases)))
        )
          add(node)
      }
    } else if (isBinaryExpression(node) && EQUALS.has(node.operatorToken.kind)) {
      const sides = [node.left, node.right]
      const isAsked = sides.some((it) => isOpen(it, types)) && sides.some((it) => isPhrase(it, phrases))
      if (isAsked || (sides.some(isOurs) && sides.some(isText))) add(node)
    } else if (isSwitchStatement(node) && isOurs(node.expression)) add(node)
    node.forEachChild(walk)
  }
  walk(source)
  return found
}

const EQUALS: ReadonlySet<SyntaxKind> = new Set([
  SyntaxKind.EqualsEqualsEqualsToken,
  SyntaxKind.ExclamationEqualsEqualsToken,
])
/** Signs alone tell how a text ends or is written, not what it means. */
const isSigns = (pattern: Node | undefined): boolean =>
  pattern !== undefined &&
  isRegularExpressionLiteral(pattern) &&
  !/[a-z]{2}/i.test(pattern.text.replaceAll(/\\u[0-9a-f]{4}|\\[a-z]/gi, ''))
const isText = (node: Node): boolean =>
  (isStringLiteral(node) || isNoSubstitutionTemplateLiteral(node)) && node.text !== ''

/** A text that may say anything, and not what an Error of another's says. */
function isOpen(text: Expression, types: Read['types']): boolean {
  const type = types.getTypeAtLocation(text)
  const name = isPropertyAccessExpression(text) ? text.name : isIdentifier(text) ? text : null
  const isTheirs = name?.text === 'message' && !isOwn(name, types)
  return type !== undefined && types.isTypeAssignableTo(types.getStringType(), type) && !isTheirs
}

/** A literal that holds words of a sentence that stands elsewhere as ours. */
function isPhrase(node: Node, phrases: ReadonlySet<string>): boolean {
  const text =
    isStringLiteral(node) || isNoSubstitutionTemplateLiteral(node) || isRegularExpressionLiteral(node)
      ? node.text
      : ''
  return pairsIn(text).some((pair) => phrases.has(pair))
}

/**
 * A text that our own types call a sentence, that the words floor gave, whose type says that it is ours, or what is cut
 * from one. Codes of a closed union are no sentences: the compiler knows them all.
 */
function isSentence(text: Expression, types: Read['types']): boolean {
  const bare = isParenthesizedExpression(text) || isNonNullExpression(text) ? text.expression : text
  const type = types.getTypeAtLocation(bare)
  if (!type) return false
  if (/\bOurText\b/.test(types.typeToString(type))) return true
  if (!types.isTypeAssignableTo(types.getStringType(), types.getNonNullableType(type) ?? type)) return false
  if (isCallExpression(bare)) {
    const to = bare.expression
    if (isPropertyAccessExpression(to) && CUTTING.includes(to.name.text))
      return isSentence(to.expression, types)
    return /\/src\/words\//.test(types.getResolvedSignature(bare)?.declaration?.path ?? '')
  }
  const name = isPropertyAccessExpression(bare) ? bare.name : isIdentifier(bare) ? bare : null
  if (!name) return false
  const declared = types.getSymbolAtLocation(name)?.declarations?.[0]?.resolve()
  if (declared && isVariableDeclaration(declared) && declared.initializer)
    return isSentence(declared.initializer, types)
  return SENTENCES.test(name.text) && isOwn(name, types)
}

const CUTTING = ['replace', 'replaceAll', 'slice', 'trim', 'trimStart', 'trimEnd', 'toLowerCase', 'concat']

/** Declared by us: a `message` of an Error or of a library is theirs. */
function isOwn(name: Node, types: Read['types']): boolean {
  const [declared] = types.getSymbolAtLocation(name)?.declarations ?? []
  const node = declared?.resolve()
  if (!node || !isBindingElement(node)) return declared !== undefined && isOurFile(declared.path)
  const from = types.getTypeAtLocation(node.parent)
  const field = from && types.getPropertyOfType(from, (node.propertyName ?? node.name)?.getText() ?? '')
  return isOurFile(field?.declarations?.[0]?.path ?? '')
}

const isOurFile = (file: string): boolean => /\/(src|tests)\//.test(file) && !/node_modules/.test(file)

/** Two words that stand beside each other, each of two letters or more: `is missing`. */
export const pairsIn = (text: string): readonly string[] => {
  const words = text.split(/(?<=[a-z’']) (?=[a-z’'])/i).map((it) => it.match(/[a-z’']+/gi) ?? [])
  return words.slice(1).flatMap((it, at) => {
    const [left, right] = [words[at]!.at(-1)?.toLowerCase(), it[0]?.toLowerCase()]
    return left && right && left.length > 1 && right.length > 1 ? [`${left} ${right}`] : []
  })
}

/** The pairs of words in all prose of a file: literals of four words or more, what is asked for left out. */
export function proseIn({ source }: Read): readonly string[] {
  const found: string[] = []
  const walk = (node: Node): void => {
    const text = isStringLiteral(node) || isNoSubstitutionTemplateLiteral(node) ? node.text : ''
    const parts = isTemplateExpression(node)
      ? [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)]
      : [text]
    if (parts.join(' ').split(/\s+/).length >= 4) found.push(...parts.flatMap(pairsIn))
    node.forEachChild(walk)
  }
  walk(source)
  return found
}
