/** What is wrong with a sign-in name, in lower case, or null. An email address is one. */
export const signInNameFault = (name: string): string | null =>
  /^[a-z0-9][a-z0-9._@+-]{2,79}$/.test(name)
    ? null
    : 'has to have 3 to 80 letters, figures or . _ @ + - and to begin with a letter or figure'
