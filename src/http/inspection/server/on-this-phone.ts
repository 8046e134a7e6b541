import { type Html, html } from '../../pages/html.ts'
import { phoneFiles } from './phone-files.ts'

/** Where the list of inspections shows what waits on this phone; filled and sent by the phone itself. */
export async function onThisPhoneOf(account: string): Promise<Html> {
  const { listModule } = await phoneFiles()
  return html`<section id="on-this-phone" data-account="${account}" aria-label="On this phone" aria-live="polite"></section>${
    listModule && html`<script type="module" src="${listModule}"></script>`
  }`
}
