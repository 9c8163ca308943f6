/**
 * Shear strength of a bond in MPa (= N/mm2): the peak load over the bonded area.
 *
 *   tau = F / A      F peak load, N; A bonded area, mm2
 *
 * Throws RangeError unless the area is positive and both are finite.
 * Source: ASTM D905 and EN 205 define the result this way (definition quoted from memory).
 * Checked: tests/domain/strength.spec.ts.
 */
export function shearStrengthMPa(peakN: number, areaMm2: number): number {
  if (!Number.isFinite(peakN) || !Number.isFinite(areaMm2) || areaMm2 <= 0)
    throw new RangeError('shearStrengthMPa requires a finite load and a positive area')
  return peakN / areaMm2
}
