import {
  kilogramsPerM3PerPoundPerFt3,
  kilogramsPerOunce,
  kilogramsPerPound,
  megapascalsPerPsi,
  metresPerFoot,
  millimetresPerInch,
  newtonsPerKilogramForce,
  newtonsPerPoundForce,
  squareMillimetresPerSquareInch,
} from './factors.ts'

/** How large a unit is in the first unit of its kind; `zeroAt`: what it reads there at zero, 0 without. */
type Size = number | { size: number; zeroAt: number }

/** Every unit that can be written behind a number, by what it is a unit of; the first of each kind has the size 1. */
const kinds: readonly Readonly<Record<string, Size>>[] = [
  {
    N: 1,
    kN: 1000,
    lbf: newtonsPerPoundForce,
    kip: 1000 * newtonsPerPoundForce,
    kgf: newtonsPerKilogramForce,
  },
  { mm: 1, cm: 10, m: 1000, µm: 0.001, in: millimetresPerInch, ft: 1000 * metresPerFoot },
  { 'mm²': 1, 'cm²': 100, 'in²': squareMillimetresPerSquareInch },
  { MPa: 1, kPa: 0.001, 'N/mm²': 1, psi: megapascalsPerPsi, ksi: 1000 * megapascalsPerPsi },
  { kg: 1, g: 0.001, mg: 1e-6, lb: kilogramsPerPound, oz: kilogramsPerOunce },
  { 'kg/m³': 1, 'g/cm³': 1000, 'lb/ft³': kilogramsPerM3PerPoundPerFt3 },
  { s: 1, ms: 0.001, min: 60, h: 3600, d: 86_400 },
  { Hz: 1, kHz: 1000 },
  { '°C': 1, '°F': { size: 5 / 9, zeroAt: 32 } },
  { 'mm/min': 1, 'mm/s': 60, 'in/min': millimetresPerInch, 'in/s': 60 * millimetresPerInch },
  { 'N/s': 1, 'kN/s': 1000, 'N/min': 1 / 60, 'kN/min': 1000 / 60, 'lbf/s': newtonsPerPoundForce },
  { 'MPa/s': 1, 'MPa/min': 1 / 60, 'psi/s': megapascalsPerPsi, 'psi/min': megapascalsPerPsi / 60 },
  { 'm/s²': 1, 'ft/s²': metresPerFoot },
  { 'N per count': 1, 'lbf per count': newtonsPerPoundForce },
  { '%': 1 },
  { '°': 1 },
  { counts: 1 },
]

/** Other ways in which people write the units of a kind, by the first unit of that kind. */
const spellings: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  // A rated load is printed on a cell in kilograms or pounds as often as in newtons
  N: { n: 'N', kn: 'kN', lb: 'lbf', lbs: 'lbf', kg: 'kgf' },
  mm: { '"': 'in', '”': 'in', '″': 'in', inch: 'in', inches: 'in', "'": 'ft', '′': 'ft', um: 'µm', μm: 'µm' },
  'mm²': { mm2: 'mm²', cm2: 'cm²', in2: 'in²', 'sq in': 'in²' },
  MPa: { mpa: 'MPa', kpa: 'kPa', 'N/mm2': 'N/mm²', 'lbf/in²': 'psi', 'lbf/in2': 'psi' },
  kg: { lbs: 'lb' },
  'kg/m³': { 'kg/m3': 'kg/m³', 'g/cm3': 'g/cm³', 'lb/ft3': 'lb/ft³' },
  s: { sec: 's', minutes: 'min', hr: 'h', hour: 'h', hours: 'h', day: 'd', days: 'd' },
  Hz: { hz: 'Hz' },
  '°C': { C: '°C', F: '°F' },
  'm/s²': { 'm/s2': 'm/s²', 'ft/s2': 'ft/s²' },
  'N per count': { N: 'N per count', lbf: 'lbf per count', 'N/count': 'N per count', 'lbf/count': 'lbf per count' },
}

/**
 * A value in one unit as it is in another of the same kind; null: `from` is no unit of the kind of `to`. `from` may be spelt
 * as people spell it, '' is `to` itself.
 *
 *   x in to = (x in from − zero of from) · size of from / size of to + zero of to
 *
 * Source of the sizes: factors.ts; NIST SP 811 for °F = 9/5 °C + 32. Checked: tests/domain/units/unitSizes.spec.ts.
 */
export function convertUnit(value: number, from: string, to: string): number | null {
  if (from === '' || from === to) return value
  const kind = kinds.find((one) => Object.hasOwn(one, to))
  if (kind === undefined) return null
  const other = spellings[Object.keys(kind)[0]!] ?? {}
  const written = !Object.hasOwn(kind, from) && Object.hasOwn(other, from) ? other[from]! : from
  if (!Object.hasOwn(kind, written)) return null
  const [source, target] = [parts(kind[written]!), parts(kind[to]!)]
  return ((value - source.zeroAt) * source.size) / target.size + target.zeroAt
}

function parts(size: Size): { size: number; zeroAt: number } {
  return typeof size === 'number' ? { size, zeroAt: 0 } : size
}
