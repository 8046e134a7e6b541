/** Why nobody may try again yet: the same for a name, an address and a code. */
export function waitInWords(seconds: number): string {
  const minutes = Math.ceil(seconds / 60)
  return `Too many wrong tries. Try again in ${minutes === 1 ? 'a minute' : `${minutes} minutes`}.`
}
