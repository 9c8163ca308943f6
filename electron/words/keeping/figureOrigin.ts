import { dayWords } from '../units/times.ts'

export type FigureOrigin = {
  /** Name of the archive's file; null: it is not known yet. */
  archive: string | null
  instant: string
  /** Of what, in a sentence or two: the records that are shown, and how. */
  about: string
  /** How much of it nobody measured. */
  simulated: 'all' | 'some' | 'none'
}

/** Where a figure comes from, as it stands below one that is handed on. */
export function figureOrigin({ archive, instant, about, simulated }: FigureOrigin): string[] {
  const from = archive === null ? '' : `Archive ${archive}, `
  const lines = [`${from}${dayWords(instant)}. ${about}`]
  if (simulated === 'all') lines.push('Simulated: nobody measured what is shown.')
  if (simulated === 'some') lines.push('Simulated in part: nobody measured some of what is shown.')
  return lines
}

/** How much of what is shown nobody measured. */
export function simulatedShare(simulated: number, shown: number): FigureOrigin['simulated'] {
  if (simulated === 0) return 'none'
  return simulated === shown ? 'all' : 'some'
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
