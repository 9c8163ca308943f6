/*
 * Exact factors of the international yard and pound agreement of 1959 (1 in = 25.4 mm, 1 lb = 0.45359237 kg) and of
 * standard gravity (3rd CGPM 1901, g_n = 9.80665 m/s²); the others follow from them without rounding, or are the nearest
 * double. Checked: tests/domain/units/factors.spec.ts against NIST SP 811 and exact arithmetic.
 */

/** Standard gravity, m/s². */
export const standardGravityMPerS2 = 9.80665
/** 1 lb in kg. */
export const kilogramsPerPound = 0.45359237
/** 1 lbf in N (0.45359237 kg × 9.80665 m/s²). */
export const newtonsPerPoundForce = 4.4482216152605
/** 1 kgf in N. */
export const newtonsPerKilogramForce = 9.80665
/** 1 in in mm. */
export const millimetresPerInch = 25.4
/** 1 ft in m. */
export const metresPerFoot = 0.3048
/** 1 in² in mm². */
export const squareMillimetresPerSquareInch = 645.16
/** 1 psi (lbf/in²) in MPa. */
export const megapascalsPerPsi = 0.006894757293168361
/** 1 oz (a sixteenth of a pound) in kg. */
export const kilogramsPerOunce = kilogramsPerPound / 16
/** 1 lb/ft³ in kg/m³. */
export const kilogramsPerM3PerPoundPerFt3 = kilogramsPerPound / metresPerFoot ** 3
