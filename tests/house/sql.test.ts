import { describe, expect, test } from 'vitest'
import { filesUnder, textOf } from './source-files.ts'

/**
 * No statement can hold what somebody sent. Questions are asked by kysely, which sends every value apart from the text,
 * and its `sql` template does the same. What is left are the places below, where a statement is a text: each says what
 * may stand in that text.
 */
const files = filesUnder('src').filter((file) => !file.startsWith('src/http/public/'))

/** The program without its comments; strings and templates stay as they are. */
const program = (file: string): string =>
  textOf(file)
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/(^|\s)\/\/ .*$/gm, '$1')

/** Files in which a statement is sent as a text. */
const AS_TEXT: Readonly<Record<string, string>> = {
  'src/store/database/database.ts': 'says who is asking; ids and role names, each held to [\\w.-]*',
  'src/store/database/acting-dialect.ts': 'sends what database.ts says',
  'src/store/database/ask-once.ts': 'the name of a function, of a closed list',
  'src/store/database/copy-out.ts': 'queries of exports/, which are constants',
  'src/store/database/migrate.ts': 'the migrations',
  'src/store/database/server.ts': 'makes the database, whose name is a constant',
  'src/store/database/plain-owner.ts':
    'constants, and names as the catalog quotes them; a password, as a literal',
  'src/store/database/embedded/postmaster.ts': 'asks whether it answers',
  'src/store/access/watch-access.ts': 'listens on a channel, whose name is a constant',
  'src/store/audit/compare-derived.ts': 'a constant',
  'src/store/audit/compare-records.ts': 'constants',
  'src/store/audit/known-breaks.ts': 'a constant',
  'src/store/audit/read-entries.ts': 'constants',
  'src/store/audit/verify-audit.ts': 'constants',
  'src/backup/copy-table.ts': 'statements of tables.ts',
  'src/backup/fill-tables.ts': 'statements of tables.ts',
  'src/backup/prepare-target.ts': 'names of tables as the catalog has them',
  'src/backup/restore-backup.ts': 'constants, and what the catalog quotes by itself',
  'src/backup/tables.ts': 'names of tables and columns as the catalog has them',
  'src/backup/write-backup.ts': 'constants',
  'src/cli/verify-audit.ts': 'constants',
  'src/jobs/carry-over.ts': 'the schema of the queue, a constant; the queue’s own statements',
  'src/jobs/install.ts': 'the schema of the queue, a constant',
}

const SENDS =
  /\.query(?:<[^>(]*(?:\{[^}]*\})?[^>(]*>)?\(|executeSql\b|CompiledQuery\.raw\(|copyTo\(|copyFrom\(/

test('a statement is sent as a text in one known set of places', () => {
  const senders = files.filter((file) => SENDS.test(program(file)))
  expect(senders.toSorted()).toEqual(Object.keys(AS_TEXT).toSorted())
})

test('kysely’s templates are written in the store, and send every value apart', () => {
  const outside = files.filter(
    (file) => /\bsql(?:<[^`]*>)?`/.test(program(file)) && !file.startsWith('src/store/'),
  )
  expect(outside).toEqual(['src/cli/demonstration/enrol.ts'])
  const unsafe = files.filter((file) => /\bsql\.(?:raw|lit|id|ref|table)\b/.test(program(file)))
  // That one says who is asking.
  expect(unsafe).toEqual(['src/store/database/database.ts'])
  expect(program(unsafe[0]!).match(/\bsql\.raw\(/g)).toHaveLength(1)
  expect(program(unsafe[0]!)).toContain('sql.raw(settingsOf(who))')
})

describe('what stands in a statement that is a text', () => {
  const COLLATION = `collated.has(\`\${name}.\${column}\`) ? ' collate "C"' : ''`
  /** Beside constants, which are written in capitals. */
  const ALLOWED: Readonly<Record<string, readonly string[]>> = {
    'src/store/database/database.ts': [
      'settingsOf(asking)',
      'name',
      'literal(value)',
      "calls.join(', ')",
      'value',
    ],
    'src/store/database/ask-once.ts': [
      'what',
      "values.map((_, index) => `$${index + 1}`).join(', ')",
      'index + 1',
    ],
    'src/store/database/copy-out.ts': ['settings', 'query', 'FORMS[form]'],
    'src/store/database/plain-owner.ts': [
      'client.escapeLiteral(password)',
      'client.escapeIdentifier(database)',
    ],
    // In the server's configuration file, which no statement is.
    'src/store/database/embedded/postmaster.ts': ['address.host'],
    'src/backup/prepare-target.ts': ['name'],
    'src/backup/restore-backup.ts': ['how'],
    'src/backup/tables.ts': ['name', 'quoted(columns)', 'by', 'column', "order.join(', ')", COLLATION],
  }
  const STATEMENT =
    /^\s*(?:"\$|select|insert|update|delete|copy|begin|create|grant|listen|alter|set_config|'\$\{value\}'| order by)/

  test.each(Object.keys(AS_TEXT))('in %s is a constant, or named here', (file) => {
    const holes = templatesOf(program(file))
      .filter(({ text }) => STATEMENT.test(text))
      .flatMap((it) => it.holes)
      .filter((hole) => !/^[A-Z][A-Z_]*$/.test(hole))
    const allowed = ALLOWED[file] ?? []
    expect(holes.filter((hole) => !allowed.includes(hole))).toEqual([])
    expect(program(file)).not.toMatch(/(?:query|raw|executeSql)\((?:[^()'`]*\+|'[^']*'\s*\+|`[^`]*`\s*\+)/)
  })

  test('the names of whom is asking for are held to letters, digits, dots, dashes', () => {
    expect(program('src/store/database/database.ts')).toContain('invariant(/^[\\w.-]*$/.test(value)')
  })

  test('queries of exports are made of constants and of each other when the program starts', () => {
    for (const file of ['src/store/exports/tables.ts', 'src/store/exports/column.ts'])
      expect(program(file)).not.toMatch(/\b(?:request|params|actor|process|await|async)\b/)
    const askers = files.filter((file) => /\b(?:csv|ndjson|features)Query\(/.test(program(file)))
    expect(askers).toEqual(['src/operations/exports/export-county.ts', 'src/store/exports/column.ts'])
    expect(program(askers[0]!).match(/\bcopyOut\(\w+, .*?, /g)).toEqual([
      'copyOut(actor, csvQuery(table), ',
      'copyOut(actor, ndjsonQuery(table), ',
      'copyOut(actor, featuresQuery(table), ',
    ])
  })
})

type Template = { readonly text: string; readonly holes: readonly string[] }

/** The template literals of a program, those within others' holes too, each with what its holes hold. */
function templatesOf(text: string): readonly Template[] {
  const found: Template[] = []
  const read = (from: number): number => {
    const holes: string[] = []
    let at = from
    while (text[at] !== '`' && at < text.length) {
      if (text[at] === '\\') at += 2
      else if (text.startsWith('${', at)) {
        const start = at + 2
        at = afterHole(start)
        holes.push(text.slice(start, at - 1).trim())
      } else at += 1
    }
    found.push({ text: text.slice(from, at), holes })
    return at + 1
  }
  const afterHole = (start: number): number => {
    let depth = 1
    let at = start
    while (depth > 0 && at < text.length) {
      if (text[at] === '`') at = read(at + 1)
      else {
        if (text[at] === '{') depth += 1
        if (text[at] === '}') depth -= 1
        at += 1
      }
    }
    return at
  }
  for (let at = 0; at < text.length; ) {
    const quote = text[at]
    if (quote === '`') at = read(at + 1)
    else if (quote === "'" || quote === '"') {
      const end = new RegExp(`(?:[^${quote}\\\\\\n]|\\\\.)*${quote}`, 'y')
      end.lastIndex = at + 1
      at = end.test(text) ? end.lastIndex : at + 1
    } else at += 1
  }
  return found
}
