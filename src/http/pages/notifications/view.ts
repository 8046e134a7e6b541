import type { Subscription } from '../../../store/subscriptions.ts'
import { statusSentence, VOICES } from '../../../words/agent/status.ts'
import { type CopyIn, inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'
import { formButton } from '../account/form-button.ts'
import { type Html, html } from '../html.ts'
import { changesPath, parcelPath, subscribePath, unsubscribePath } from '../layout/addresses.ts'
import { dayAt } from '../words/dates.ts'
import { CHANGES, NOTIFICATIONS_PART } from './copy.ts'
import type { ChangeLine } from './present.ts'

/** Where the form stands on the page. */
export const NOTIFICATIONS = 'notifications'

export type NotificationsShown = {
  readonly live: readonly Subscription[]
  /** The key of the webhook just made, which is shown once. */
  readonly secret: string | null
  readonly typed: string
  readonly fault: string | null
}

/** Notifications of a parcel's status: on a page of the service, or by a webhook. */
export function notificationsPart(
  county: string,
  parcel: string,
  shown: NotificationsShown,
  language: Language,
): Html {
  const copy = inLanguage(NOTIFICATIONS_PART, language)
  const here = shown.live.find(({ address }) => address === null)
  return html`
    <section id="${NOTIFICATIONS}">
      <h2>${copy.title}</h2>
      ${
        here
          ? html`
            <p>${copy.on(dayAt(here.madeAt, language), changesPath(county))}</p>
            ${formButton(unsubscribePath(county, here.id), copy.stop)}
          `
          : html`
            <p>${copy.off(changesPath(county))}</p>
            <form method="post" action="${subscribePath(county, parcel)}">
              <p><button name="here" value="yes">${copy.start}</button></p>
            </form>
          `
      }
      ${
        shown.secret &&
        html`
          <div class="notice" role="status">
            <p>${copy.made}</p>
            <p><code>${shown.secret}</code></p>
          </div>
        `
      }
      ${webhooks(county, parcel, shown, copy, language)}
    </section>
  `
}

function webhooks(
  county: string,
  parcel: string,
  { live, secret, typed, fault }: NotificationsShown,
  copy: CopyIn<typeof NOTIFICATIONS_PART>,
  language: Language,
): Html {
  const list = live.flatMap(({ id, address, madeAt }) => (address === null ? [] : [{ id, address, madeAt }]))
  const open = fault !== null || secret !== null || list.length > 0
  return html`
    <details${open && html` open`}>
      <summary>${copy.webhook}</summary>
      ${
        list.length > 0 &&
        html`
          <ul class="hits">
            ${list.map(
              ({ id, address, madeAt }) => html`
                <li>
                  ${copy.sentSince(dayAt(madeAt, language), html`<code class="long">${address}</code>`)}
                  ${formButton(unsubscribePath(county, id), copy.stop)}
                </li>
              `,
            )}
          </ul>
        `
      }
      <form method="post" action="${subscribePath(county, parcel)}">
        <div class="fields">
          <div>
            <label for="address">${copy.address}</label>
            <input
              id="address" name="address" type="url" inputmode="url" autocapitalize="none"
              spellcheck="false" maxlength="2000" required value="${typed}" placeholder="https://"
              aria-describedby="${fault ? 'address-fault ' : ''}address-help"
              ${fault && html`aria-invalid="true"`}
            >
            ${fault && html`<p class="fault" id="address-fault" role="alert">${fault}</p>`}
            <p class="soft" id="address-help">${copy.addressHelp}</p>
          </div>
        </div>
        <p><button>${copy.add}</button></p>
      </form>
    </details>
  `
}

/** The changes kept for an office, newest first: the word now, the word before, and when. */
export function changesView(county: string, changes: readonly ChangeLine[], language: Language): Html {
  const copy = inLanguage(CHANGES, language)
  if (changes.length === 0)
    return html`
      <h1>${copy.title}</h1>
      <p class="lead">${copy.none}</p>
    `
  return html`
    <h1>${copy.title}</h1>
    <p class="lead">${copy.lead}</p>
    <ul class="hits">
      ${changes.map(
        ({ parcel, now, before, at }) => html`
          <li>
            <a href="${parcelPath(county, parcel)}"><span class="number">${parcel}</span></a>${' '}
            <b>${VOICES[language].word[now.word]}</b>, ${dayAt(at, language)}.${' '}
            <span class="soft">
              ${before === null ? copy.first : copy.before(VOICES[language].word[before])}
            </span>
            <p>${statusSentence(now, language)}</p>
          </li>
        `,
      )}
    </ul>
  `
}
