/*
 * Exact factors of the international yard and pound agreement of 1959 (1 in = 25.4 mm, 1 lb = 0.45359237 kg) and of
 * standard gravity (3rd CGPM 1901, g_n = 9.80665 m/s²); the others follow from them without rounding, or are the nearest
 * double. Checked: tests/domain/units/conversions.spec.ts against NIST SP 811 and exact arithmetic.
 */

/** Standard gravity, m/s². */
export const standardGravityMPerS2 = 9.80665
/** 1 lbf in N (0.45359237 kg × 9.80665 m/s²). */
export const newtonsPerPoundForce = 4.4482216152605
/** 1 kgf in N. */
export const newtonsPerKilogramForce = 9.80665
/** 1 in in mm. */
export const millimetresPerInch = 25.4
/** 1 in² in mm². */
export const squareMillimetresPerSquareInch = 645.16
/** 1 psi (lbf/in²) in MPa. */
export const megapascalsPerPsi = 0.006894757293168361

/** Pounds-force from newtons, F / 4.4482216152605. */
export const poundsForceFromNewtons = (forceN: number): number => forceN / newtonsPerPoundForce
/** Newtons from pounds-force, F × 4.4482216152605. */
export const newtonsFromPoundsForce = (forceLbf: number): number => forceLbf * newtonsPerPoundForce
/** Kilograms-force from newtons, F / 9.80665. */
export const kilogramsForceFromNewtons = (forceN: number): number => forceN / newtonsPerKilogramForce
/** Newtons from kilograms-force, F × 9.80665. */
export const newtonsFromKilogramsForce = (forceKgf: number): number => forceKgf * newtonsPerKilogramForce
/** Kilonewtons from newtons. */
export const kilonewtonsFromNewtons = (forceN: number): number => forceN / 1000
/** Newtons from kilonewtons. */
export const newtonsFromKilonewtons = (forceKN: number): number => forceKN * 1000
/** Inches from millimetres, l / 25.4. */
export const inchesFromMillimetres = (lengthMm: number): number => lengthMm / millimetresPerInch
/** Millimetres from inches, l × 25.4. */
export const millimetresFromInches = (lengthIn: number): number => lengthIn * millimetresPerInch
/** Square inches from square millimetres, A / 645.16. */
export const squareInchesFromSquareMillimetres = (areaMm2: number): number => areaMm2 / squareMillimetresPerSquareInch
/** Square millimetres from square inches, A × 645.16. */
export const squareMillimetresFromSquareInches = (areaIn2: number): number => areaIn2 * squareMillimetresPerSquareInch
/** Pounds-force per square inch from megapascals, p / 0.006894757293168361. */
export const psiFromMegapascals = (pressureMPa: number): number => pressureMPa / megapascalsPerPsi
/** Megapascals from pounds-force per square inch, p × 0.006894757293168361. */
export const megapascalsFromPsi = (pressurePsi: number): number => pressurePsi * megapascalsPerPsi
