/** A field of a form as it was typed; empty where it was not sent. */
export const typed = (body: unknown, name: string): string => {
  const value = ((body ?? {}) as Readonly<Record<string, unknown>>)[name]
  return typeof value === 'string' ? value : ''
}
