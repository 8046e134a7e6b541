/**
 * Every page by its route, under the browser tests that walk it. Those tests take their routes from here, and
 * tests/http/access/matrix.test.ts, which asks every route that is served, fails for one that answers with a page and
 * stands nowhere in this list.
 */
export const WALKED = {
  /** tests/http/pages/in-browser.test.ts */
  everyPage: [
    '/',
    '/sign-in',
    '/letters',
    '/letters/:code',
    '/counties/:county/search',
    '/counties/:county/parcels/:parcel',
    '/counties/:county/parcels/:parcel/brief',
    '/counties/:county/parcels/:parcel/systems',
    '/counties/:county/reconciliations/:id',
    '/counties/:county/queue',
    '/counties/:county/overview',
    '/counties/:county/patterns',
    '/counties/:county/rules',
    '/counties/:county/rules/:place/:topic',
    '/counties/:county/rules/trial',
    '/counties/:county/rules/trials/:id',
    '/counties/:county/imports',
    '/counties/:county/imports/:id',
    '/counties/:county/forms',
    '/counties/:county/forms/:id',
    '/counties/:county/inspections',
    '/counties/:county/changes',
  ],
  /** tests/http/pages/account/in-browser.test.ts */
  account: [
    '/account',
    '/account/second-step',
    '/people',
    '/tokens',
    '/counties/:county/organizations',
    '/sign-in/code',
    '/sign-in/with/:provider/return',
    '/invitation',
  ],
  /** tests/http/pages/documents/in-browser.test.ts */
  documents: ['/counties/:county/documents', '/counties/:county/documents/:id'],
  /** tests/http/pages/permit/in-browser.test.ts */
  permit: ['/counties/:county/permits/:id'],
  /** tests/http/inspection/in-browser/plainly.test.ts */
  inspection: ['/counties/:county/parcels/:parcel/inspection'],
} as const

export type WalkedBy = keyof typeof WALKED
export type WalkedRoute<By extends WalkedBy> = (typeof WALKED)[By][number]
