/** Without folders, and no longer than a name is; null where there is none that can be kept. */
export function fileName(sent: string | undefined): string | null {
  const name = (sent ?? '')
    .split(/[/\\]/)
    .at(-1)!
    .replace(/[\u0000-\u001f\u007f]/g, '')
    .toWellFormed()
    .trim()
    .slice(-200)
  return name === '' ? null : name
}
