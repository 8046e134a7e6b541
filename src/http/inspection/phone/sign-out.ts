import { PAGES } from './files.ts'

/**
 * Whoever signs out takes the county's files off this phone. What was typed and not sent stays, for their account
 * alone: it goes once they sign in again.
 */
export function forgetPagesAtSignOut(): void {
  document.addEventListener('submit', ({ target }) => {
    if (new URL((target as HTMLFormElement).action).pathname === '/sign-out') void caches.delete(PAGES)
  })
}
