import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'

/** What is asked for where there is no window above 0. */
const askForWindow = 'Write a window in milliseconds, as in 50.'

/** A filter as chosen and typed. */
export type FilterDraft = { kind: FilterKind; cutoffHz: string; windowMs: string }
export type FilterKind = 'none' | 'cfc-60' | 'cfc-180' | 'cfc-600' | 'cfc-1000' | 'butterworth' | 'moving-average'

export const filterNames: readonly { kind: FilterKind; name: string }[] = [
  { kind: 'none', name: 'none' },
  { kind: 'cfc-60', name: 'CFC 60' },
  { kind: 'cfc-180', name: 'CFC 180' },
  { kind: 'cfc-600', name: 'CFC 600' },
  { kind: 'cfc-1000', name: 'CFC 1000' },
  { kind: 'butterworth', name: 'Butterworth' },
  { kind: 'moving-average', name: 'moving average' },
]

/** No filter. What would be typed suits the sample rate: a tenth of it, and ten samples. */
export function firstDraft(sampleRateHz: number | null): FilterDraft {
  const rate = sampleRateHz ?? 80
  return { kind: 'none', cutoffHz: round(rate / 10), windowMs: round(10_000 / rate) }
}

function round(value: number): string {
  return String(Number(value.toPrecision(2)))
}

/** The filter that a draft says, null for none, or one clear sentence. */
export function readFilter({
  kind,
  cutoffHz,
  windowMs,
}: FilterDraft): { filter: CurveFilter | null; error: null } | { filter: null; error: string } {
  switch (kind) {
    case 'none':
      return { filter: null, error: null }
    case 'cfc-60':
    case 'cfc-180':
    case 'cfc-600':
    case 'cfc-1000':
      return { filter: { kind: 'cfc', frequencyClass: Number(kind.slice(4)) }, error: null }
    case 'butterworth': {
      const read = readQuantity(cutoffHz, { unit: 'Hz', factor: 1 }, 'a frequency in Hz, as in 10')
      if ('error' in read) return { filter: null, error: read.error }
      if (read.stored === null || read.stored <= 0) return { filter: null, error: 'Write a frequency in Hz, as in 10.' }
      return { filter: { kind, cutoffHz: read.stored }, error: null }
    }
    case 'moving-average': {
      const read = readWindow(windowMs)
      return 'error' in read ? { filter: null, error: read.error } : { filter: { kind, ...read }, error: null }
    }
  }
}

/** A typed window, s, or one clear sentence. */
export function readWindow(windowMs: string): { windowS: number } | { error: string } {
  const read = readQuantity(windowMs, { unit: 'ms', factor: 1000 }, 'a window in milliseconds, as in 50')
  if ('error' in read) return read
  return read.stored === null || read.stored <= 0 ? { error: askForWindow } : { windowS: read.stored }
}
