/** An address of this service, whatever was asked: nothing that leads elsewhere, and not back to the sign-in itself. */
export function whereTo(asked: unknown): string {
  if (typeof asked !== 'string' || !asked.startsWith('/') || asked.length > 2_000) return '/'
  const here = 'http://here.invalid'
  if (!URL.canParse(asked, here)) return '/'
  const { origin, pathname, search } = new URL(asked, here)
  return origin !== here || pathname.startsWith('//') || pathname.startsWith('/sign-')
    ? '/'
    : `${pathname}${search}`
}
