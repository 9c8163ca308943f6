import type { GravityChoice } from '#contract/calibration/loading.ts'
import { Trouble } from '#contract/errors.ts'
import { normalGravity } from './normalGravity.ts'

/** Local gravity with the half-width of what is believed of it, as a share of g. */
export type LocalGravity = { readonly gMPerS2: number; readonly halfWidthShare: number }

/** How far true local gravity may lie from normal gravity: some 10 to 50 mGal, so 0.005 %. */
const anomalyShare = 5e-5

/**
 * Local gravity in m/s2 from latitude and height, or as typed, with a half-width as a share of it.
 *
 * From latitude the half-width is 0.005 %, the usual gravity anomaly; typed, it is what the person states.
 * Throws Trouble for a latitude outside −90..90°, a height outside −500..10,000 m, or a typed g outside 9.76..9.84 m/s2.
 * Source: normalGravity; size of anomalies is common practice. Checked: tests/domain/calibration/weights/localGravity.spec.ts.
 */
export function localGravity(choice: GravityChoice): LocalGravity {
  if (choice.kind === 'typed') {
    const { gMPerS2, halfWidthMPerS2 } = choice
    if (!(gMPerS2 >= 9.76 && gMPerS2 <= 9.84))
      throw new Trouble(
        'invalid-input',
        `Gravity of ${gMPerS2} m/s2 does not occur on the surface of the earth.`,
        'Type local gravity between 9.76 m/s2 and 9.84 m/s2, or give latitude and height instead.',
      )
    return { gMPerS2, halfWidthShare: halfWidthMPerS2 / gMPerS2 }
  }
  if (!(choice.latitudeDeg >= -90 && choice.latitudeDeg <= 90))
    throw new Trouble(
      'invalid-input',
      `A latitude of ${choice.latitudeDeg} degrees does not exist.`,
      'Give the latitude in degrees from -90 (south) to 90 (north).',
    )
  if (!(choice.heightM >= -500 && choice.heightM <= 10_000))
    throw new Trouble(
      'invalid-input',
      `A height of ${choice.heightM} m above sea level is out of range.`,
      'Give the height of the bench above sea level, from -500 m to 10,000 m.',
    )
  return {
    gMPerS2: normalGravity(choice.latitudeDeg, choice.heightM, choice.ellipsoid),
    halfWidthShare: anomalyShare,
  }
}
