/**
 * Shear strength in MPa from the peak load in N and the bonded area in mm².
 *
 *   tau = F / A      1 N/mm² = 1 MPa
 *
 * As observed: torn wood is recorded beside it (contract/breaks/assessment.ts) and changes nothing here, though a block whose
 * wood tore first shows only that its bond held at least so much.
 * Throws RangeError for an area that is not above 0 or a load that is not finite.
 * Source: EN 205 (tau = Fmax / (l2 b)). Checked: tests/domain/strength/strength.spec.ts.
 */
export function shearStrengthMPa(peakN: number, areaMm2: number): number {
  if (!Number.isFinite(peakN)) throw new RangeError('shearStrengthMPa requires a finite peak load')
  if (!(areaMm2 > 0 && areaMm2 < Number.POSITIVE_INFINITY))
    throw new RangeError('shearStrengthMPa requires an area above 0')
  return peakN / areaMm2
}
