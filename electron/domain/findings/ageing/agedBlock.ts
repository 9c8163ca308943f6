/** Single blocks: age in months and strength in MPa. */
export type AgedBlock = { readonly ageMonths: number; readonly strengthMPa: number }
