import { type Html, html } from '../html.ts'

/** A form that is one button. */
export const formButton = (
  action: string,
  says: string,
  fields: Readonly<Record<string, string>> = {},
): Html =>
  html`
    <form method="post" action="${action}">
      ${Object.entries(fields).map(
        ([name, value]) => html`<input type="hidden" name="${name}" value="${value}">`,
      )}
      <button class="link">${says}</button>
    </form>
  `
