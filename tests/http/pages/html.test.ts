import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { flag, html, markup, type Slot } from '../../../src/http/pages/html.ts'

describe('a slot', () => {
  test('writes text so that no sign of it is read as markup', () => {
    expect(html`<p title="${`"><script>`}">${`<b>&'"`}</p>`.text).toBe(
      '<p title="&quot;&gt;&lt;script&gt;">&lt;b&gt;&amp;&#39;&quot;</p>',
    )
  })

  test('takes markup as it is, lists of both, and nothing for null and false', () => {
    const parts: readonly Slot[] = ['a<', html`<i>${'b<'}</i>`, null, false, undefined, 0, [markup('<hr>')]]
    expect(html`[${parts}]`.text).toBe('[a&lt;<i>b&lt;</i>0<hr>]')
  })

  test('an object that only looks like markup is not taken for it', () => {
    const forged = { text: '<script>', toString: () => '<script>' } as unknown as string
    expect(() => html`${forged}`.text).toThrow(TypeError)
  })

  test('whatever the text, reading the markup back gives it, and no tag begins in it', () => {
    const read = (text: string) =>
      text
        .replaceAll('&lt;', '<')
        .replaceAll('&gt;', '>')
        .replaceAll('&quot;', '"')
        .replaceAll('&#39;', "'")
        .replaceAll('&amp;', '&')
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const written = html`${text}`.text
        return read(written) === text && !/[<>"']/.test(written)
      }),
    )
  })
})

test('a flag is there or is not', () => {
  expect(html`<option ${flag('selected', true)}><option ${flag('selected', false)}>`.text).toBe(
    '<option selected><option >',
  )
})

describe('a template is laid out as a tree', () => {
  test('line breaks beside tags and slots are layout', () => {
    const page = html`
      <ul>
        ${['a', 'b'].map(
          (name) => html`
            <li>
              ${name}
            </li>
          `,
        )}
      </ul>
    `
    expect(page.text).toBe('<ul><li>a</li><li>b</li></ul>')
  })

  test('between words and between attributes they are one space', () => {
    expect(
      html`
      <input
        name="n" value="${'v'}"
        ${flag('required', true)}
      >
      Two words
      of text, <b>and</b> ${'a slot'}
    `.text,
    ).toBe('<input name="n" value="v" required>Two words of text, <b>and</b> a slot')
  })

  test('what a slot holds keeps its own line breaks', () => {
    expect(
      html`
      <textarea>${'one\n  two'}</textarea>
    `.text,
    ).toBe('<textarea>one\n  two</textarea>')
  })

  test('a sign of text that tags are made of does not begin one', () => {
    expect(
      html`
      <p title="1 > 0
        and more">1 < 2, it's
      so</p>
    `.text,
    ).toBe('<p title="1 > 0 and more">1 < 2, it\'s so</p>')
  })
})
