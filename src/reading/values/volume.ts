import { parseVolume } from '../../measure/parse/volume.ts'
import { type Found, matches } from './found.ts'

// Readers of pictures part `1,000` into `1, 000`.
const AMOUNT = String.raw`\d{1,3}(?:[,.]\d{3})+|\d{1,2}, \d{3}|\d+(?:\.\d+)?`
const WITH_UNIT = new RegExp(
  String.raw`(?<![\d.,/])(${AMOUNT})\s*-?\s*(gallons?|gals?|gal|gls?|g|cu\.?\s*ft|cubic\s*f(?:ee|oo)t|liters?|litres?)\b\.?(?!\s*(?:per|/|a)\s*day|\s*/|pd)`,
  'i',
)
const BARE = new RegExp(
  String.raw`(?<![\d.,/'"$#-])(${AMOUNT})(?![\dA-Za-z'"’”/%]|[.,]\d|\s?(?:ft|in\b|feet|x\b|sq|min|gpd|mpi|-\d))`,
  'i',
)

/** Volumes in a text, in order; bare numbers as gallons where `bare` allows them. */
export function findVolumes(
  text: string,
  bare: 'gal' | 'refuse' = 'refuse',
  unitInLabel = false,
): Found<string>[] {
  const found = matches(text, WITH_UNIT, (match) => {
    const [, amount, unit] = match
    const value = /^(?:g|gal|gl)/i.test(unit!) ? `${thousands(amount!)} gal` : `${amount} ${unit}`
    // `000 gal` has lost its thousands.
    if (!parseVolume(value).ok || /^0\d/.test(amount!)) return undefined
    const lead = /(?<![\d'"/.-])(\d{1,2})[ ,.]{1,2}$/.exec(text.slice(0, match.index))?.[1]
    if (lead === undefined || !/^\d{3}$/.test(amount!)) return { value, fit: 1, doubts: [] }
    const reading = `${lead},${amount} gal`
    const says = `"${lead}" stands before it, as the thousands would`
    return { value, fit: 0.5, doubts: [{ kind: 'confusable-digits', says, readings: [reading] }] }
  })
  if (found.length > 0 || bare === 'refuse') return found
  return matches(text, BARE, ([, amount]) => {
    const number = Number(amount!.replace(/,\s?/g, ''))
    const value = `${thousands(amount!)} gal`
    if (number < 50 || number > 50_000 || !parseVolume(value).ok) return undefined
    return {
      value,
      fit: unitInLabel ? 0.98 : 0.85,
      doubts: unitInLabel
        ? []
        : [
            {
              kind: 'unit-assumed',
              says: `no unit is written beside ${amount}; gallons are usual here`,
              readings: [value],
            },
          ],
    }
  })
}

/** A point between thousands is a comma misread: `1.000` is `1,000` (nobody states thousandths of a gallon). */
const thousands = (amount: string): string => amount.replace(', ', ',').replace(/\.(\d{3})$/, ',$1')
