const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/\bEdgA?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\bSamsungBrowser\//, 'Samsung Internet'],
  [/\b(Firefox|FxiOS)\//, 'Firefox'],
  [/\b(Chrome|CriOS)\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
]
const SYSTEMS: readonly (readonly [RegExp, string])[] = [
  [/\b(iPhone|iPad)\b/, 'an iPhone or iPad'],
  [/\bAndroid\b/, 'Android'],
  [/\bWindows\b/, 'Windows'],
  [/\bMac OS X\b/, 'a Mac'],
  [/\bCrOS\b/, 'a Chromebook'],
  [/\bLinux\b/, 'Linux'],
]

/** What a browser says of itself in a few words, for its owner to know it by; null where that says nothing. */
export function browserInWords(userAgent: string | undefined): string | null {
  const named = (list: typeof BROWSERS) => list.find(([pattern]) => pattern.test(userAgent ?? ''))?.[1]
  const [browser, system] = [named(BROWSERS), named(SYSTEMS)]
  if (browser && system) return `${browser} on ${system}`
  return browser ?? system ?? null
}
