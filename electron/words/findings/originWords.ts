import { dayWords } from '../units/times.ts'

export type FigureOrigin = {
  /** Name of the archive's file; null: it is not known yet. */
  archive: string | null
  instant: string
  /** How torn wood is treated, in words. */
  treatment: string
  dataSha256: string
  simulated: 'all' | 'some' | 'none'
}

/** Where a figure comes from, as it stands below one that is handed on. */
export function originLines({ archive, instant, treatment, dataSha256, simulated }: FigureOrigin): string[] {
  const from = archive === null ? '' : `Archive ${archive}, `
  const lines = [`${from}${dayWords(instant)}. Torn wood: ${treatment}. Data ${dataSha256.slice(0, 16)}.`]
  if (simulated === 'all') lines.push('Simulated: nobody measured these results.')
  if (simulated === 'some') lines.push('Simulated in part: nobody measured some of these results.')
  return lines
}

/** A name for a figure's file, of letters and digits of any script with a hyphen between. */
export function figureFileName(title: string): string {
  return (
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 80) || 'figure'
  )
}
