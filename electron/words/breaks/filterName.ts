import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import { halfPowerOfClassHz } from '#domain/signal/filters/channelFrequencyClass.ts'

/** What a filter is called beside a curve, with the figures that make it. */
export function filterName(filter: CurveFilter): string {
  switch (filter.kind) {
    case 'cfc':
      return `CFC ${filter.frequencyClass} (SAE J211-1, ISO 6487), forward and backward, −3 dB at ${figure(halfPowerOfClassHz(filter.frequencyClass))} Hz`
    case 'butterworth':
      return `Butterworth of second order, forward and backward, −3 dB at ${figure(filter.cutoffHz)} Hz`
    case 'moving-average':
      return `Moving average over ${figure(filter.windowS)} s, centred`
  }
}

const figure = (value: number) => Number(value.toPrecision(4))
