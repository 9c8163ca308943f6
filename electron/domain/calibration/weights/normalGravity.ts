type EllipsoidConstants = {
  equatorGravity: number
  k: number
  eccentricitySquared: number
  semiMajorAxisM: number
  flattening: number
  m: number
}

/** Reference ellipsoids whose normal gravity is known. */
export type Ellipsoid = 'WGS 84' | 'GRS 80'

const constants: Record<Ellipsoid, EllipsoidConstants> = {
  'WGS 84': {
    equatorGravity: 9.7803253359,
    k: 0.00193185265241,
    eccentricitySquared: 0.00669437999013,
    semiMajorAxisM: 6_378_137,
    flattening: 1 / 298.257223563,
    m: 0.00344978650684,
  },
  'GRS 80': {
    equatorGravity: 9.7803267715,
    k: 0.001931851353,
    eccentricitySquared: 0.0066943800229,
    semiMajorAxisM: 6_378_137,
    flattening: 1 / 298.257222101,
    m: 0.00344978600308,
  },
}

/**
 * Normal gravity in m/s2 at a latitude in degrees and a height above the ellipsoid in metres.
 *
 *   g(φ) = gₑ (1 + k sin²φ) / sqrt(1 − e² sin²φ)                                    (Somigliana)
 *   g(φ, h) = g(φ) [ 1 − (2/a)(1 + f + m − 2 f sin²φ) h + 3 h²/a² ]                   (second order in h)
 *
 * gₑ gravity at the equator, k and e² constants of the ellipsoid, a semi-major axis m, f flattening, m centrifugal over
 * gravity force at the equator. True local gravity differs by some 0.005 % (rock of other density underneath).
 * Throws RangeError for a latitude outside −90..90 or a height outside −500..10,000 m (the formula is of second order).
 * Source: defining constants of WGS 84; for GRS 80 a, f, e² and gₑ as the geodetic authorities list them (H. Moritz, Geodetic
 * Reference System 1980), k and m of both from memory.
 * Checked: tests/domain/calibration/weights/normalGravity.spec.ts at tabulated latitudes and heights.
 */
export function normalGravity(latitudeDeg: number, heightM = 0, ellipsoid: Ellipsoid = 'WGS 84'): number {
  if (!(latitudeDeg >= -90 && latitudeDeg <= 90))
    throw new RangeError('normalGravity requires a latitude from -90 to 90 degrees')
  if (!(heightM >= -500 && heightM <= 10_000))
    throw new RangeError('normalGravity requires a height from -500 to 10,000 m')
  const { equatorGravity, k, eccentricitySquared, semiMajorAxisM, flattening, m } = constants[ellipsoid]
  const sine = Math.sin((latitudeDeg * Math.PI) / 180)
  const square = sine * sine
  const atSea = (equatorGravity * (1 + k * square)) / Math.sqrt(1 - eccentricitySquared * square)
  const height = heightM / semiMajorAxisM
  return atSea * (1 - 2 * (1 + flattening + m - 2 * flattening * square) * height + 3 * height * height)
}
