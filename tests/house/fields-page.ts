import { CATALOG, type Place } from '../../src/catalog/catalog.ts'
import type { Bounds, Field, Fields } from '../../src/catalog/field.ts'
import { COMPONENT_KINDS } from '../../src/catalog/kinds.ts'
import { KIND_WORDS } from '../../src/words/field-choices.ts'
import { describedField } from '../../src/words/fields.ts'

const TITLES: { readonly [P in Place]: string } = {
  permit: 'A permit',
  inspection: 'An inspection',
  component: 'A component',
}

/** `docs/fields.md`, made from the catalog and its words. */
export const fieldsPage = (): string =>
  `${[
    `# Fields

Every fact that a permit, an inspection or a component can have, as \`src/catalog/\` declares it. Entries, answers, forms,
imports and this page are made from it: \`npm test -- tests/house/fields.test.ts -u\` writes the page anew.

*Possible* are the limits beyond which a value is refused. A value beyond what is *plausible* is asked
about ("84 ft? Did you mean 84 in?"), in programs, forms and files alike, until it is fixed or marked as meant
(\`84 ft, checked\`). The limits are common practice, and for some kinds of component they are its own. *Headings* are
how columns of other people's files name the field, besides its own name.`,
    ...Object.entries(CATALOG).map(([place, fields]) => section(place as Place, fields)),
  ].join('\n\n')}\n`

const section = (place: Place, fields: Fields): string =>
  [
    `## ${TITLES[place]}\n`,
    '| field | what it is | value | entered by | possible | plausible | kinds of component | headings |',
    '| --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows(fields, place),
  ].join('\n')

const rows = (fields: Fields, at: string): readonly string[] =>
  Object.entries(fields).flatMap(([name, field]) => {
    const path = `${at}.${name}`
    const { needed, by, aliases = [] } = field
    const cells = [
      `\`${path.slice(path.indexOf('.') + 1)}\`${needed ? ' (needed)' : ''}`,
      describedField(path),
      written(field),
      by === 'both' ? 'permit, inspection' : by,
      'possible' in field ? bounds(field.possible) : '',
      plausible(field),
      kinds(field),
      aliases.join(', '),
    ]
    return [`| ${cells.join(' | ')} |`, ...('parts' in field ? rows(field.parts, path) : [])]
  })

function written(field: Field): string {
  switch (field.value) {
    case 'choice':
    case 'choices':
      return `${field.value === 'choice' ? 'one' : 'some'} of: ${field.choices.join(', ')}`
    case 'whole':
      return 'whole number'
    case 'number':
      return `number, ${field.unit}`
    case 'length':
    case 'level':
    case 'volume':
      return `${field.value}, ${field.unit}`
    case 'line':
      return `text, ${field.most} characters`
    case 'prose':
      return `text of several lines, ${field.most} characters`
    case 'lines':
      return 'several texts'
    case 'flag':
      return 'yes or no'
    case 'group':
      return 'several values'
    case 'rows':
      return `list of at most ${field.most}`
    case 'partial-date':
      return 'date, or its month or year'
    case 'date':
      return 'date'
  }
}

const figure = (value: number): string => String(Number(value.toPrecision(3)))
const bounds = ([least, most]: Bounds): string => `${figure(least)} to ${figure(most)}`

function plausible(field: Field): string {
  const own = (field.on ?? []).flatMap((use) =>
    use.plausible
      ? [`${use.kinds.map((kind) => KIND_WORDS[kind].toLowerCase()).join(', ')}: ${bounds(use.plausible)}`]
      : [],
  )
  const all = 'plausible' in field && field.plausible ? [bounds(field.plausible)] : []
  return [...all, ...own].join('; ')
}

function kinds({ on = [] }: Field): string {
  const named = on.flatMap((use) => use.kinds)
  return named.length === COMPONENT_KINDS.length
    ? 'all'
    : named.map((kind) => KIND_WORDS[kind].toLowerCase()).join(', ')
}
