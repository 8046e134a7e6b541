import type { Copy } from '../../../words/copy.ts'
import { type Html, html } from '../html.ts'

const link = (to: string, words: string): Html => html`<a href="${to}">${words}</a>`

export const NOTIFICATIONS_PART = {
  title: { en: 'Get notified when the status changes', es: 'Reciba avisos cuando cambie el estado' },
  on: {
    en: (since: Html, to: string) =>
      html`Your office has followed this parcel since ${since}. See ${link(to, 'what changed')}.`,
    es: (since: Html, to: string) =>
      html`Su oficina sigue esta parcela desde el ${since}. Vea ${link(to, 'los cambios')}.`,
  },
  off: {
    en: (to: string) =>
      html`
        Follow this parcel and each change of its status is listed under ${link(to, 'What changed')}.
        Everyone in your office sees it.
      `,
    es: (to: string) =>
      html`
        Siga esta parcela y cada cambio de estado aparecerá en ${link(to, 'Cambios')}. Lo verá toda su
        oficina.
      `,
  },
  start: { en: 'Follow this parcel', es: 'Seguir esta parcela' },
  stop: { en: 'Stop notifications', es: 'Detener los avisos' },
  made: {
    en:
      'Notifications now go to this address. Each is signed with the key below, so your system can ' +
      'tell that it is genuine. Copy the key now. It is not shown again.',
    es:
      'Los avisos ya van a esta dirección. Cada uno se firma con la clave de abajo, para que su ' +
      'sistema sepa que es auténtico. Copie la clave ahora. No se muestra otra vez.',
  },
  webhook: { en: 'Webhook', es: 'Webhook' },
  sentSince: {
    en: (since: Html, address: Html) => html`Sent since ${since}: ${address}`,
    es: (since: Html, address: Html) => html`Se envían desde el ${since}: ${address}`,
  },
  address: { en: 'Webhook address', es: 'Dirección del webhook' },
  addressHelp: {
    en:
      'It starts with https:// and can be reached over the Internet. Each time the status changes, ' +
      'a short message goes there: the parcel, the status now and before, and the time. Nothing ' +
      'else.',
    es:
      'Empieza con https:// y se puede alcanzar por Internet. Cada vez que cambia el estado se ' +
      'envía un mensaje corto: la parcela, el estado de ahora y el de antes, y la hora. Nada más.',
  },
  add: { en: 'Add the webhook', es: 'Agregar el webhook' },
} satisfies Copy

export const NOTIFICATION_FAULTS = {
  known: {
    en: 'Notifications already go to this address. Lost the key? Stop them above and add the address again.',
    es: 'Los avisos ya van a esta dirección. ¿Perdió la clave? Deténgalos arriba y agregue la dirección otra vez.',
  },
  address: {
    en: (why: string) => `The address ${why}.`,
    es: (_why: string) =>
      'No se puede usar esta dirección. Debe empezar con https:// y se debe poder alcanzar por Internet.',
  },
  refused: {
    en: (why: string) => why,
    es: (_why: string) => 'Su oficina ya tiene demasiados avisos. Detenga alguno primero.',
  },
} satisfies Copy

export const CHANGES = {
  title: { en: 'What changed', es: 'Cambios' },
  none: {
    en: 'No changes yet. To see changes here, open a parcel and select “Follow this parcel”.',
    es: 'Aún no hay cambios. Para verlos aquí, abra una parcela y elija «Seguir esta parcela».',
  },
  lead: {
    en: 'Changes of the parcels that your office follows, newest first. Open a parcel for its status today.',
    es:
      'Cambios de las parcelas que sigue su oficina, los más nuevos primero. Abra una parcela para ' +
      'ver su estado de hoy.',
  },
  first: { en: 'First status.', es: 'Primer estado.' },
  before: { en: (word: string) => `Before: ${word}.`, es: (word: string) => `Antes: ${word}.` },
} satisfies Copy
