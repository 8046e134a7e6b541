/**
 * A component's name within a sentence, with its article: the tank, the D-box. A numbered or lettered one is a proper
 * name and takes none: tank 1, pit B.
 */
export const the = (label: string): string =>
  /(?:^|\s)(?:[A-Z]|#?\d+)$|^(?:the|a|an|no\.?)\s/i.test(label) ? label : `the ${label}`

/** Trenches are, a trench is: by the name's last letters, which is as far as a name tells. */
export const isOrAre = (label: string): 'is' | 'are' => (isMany(label) ? 'are' : 'is')
export const wasOrWere = (label: string): 'was' | 'were' => (isMany(label) ? 'were' : 'was')
export const itOrThem = (label: string): 'it' | 'them' => (isMany(label) ? 'them' : 'it')
const isMany = (label: string): boolean => /[^s]s$/i.test(label)
