import type { StoredSeries } from '#contract/findings/climateAnswers.ts'
import type { ClimatePanel } from '#figures/findings/climate/climatePanel.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const day = 86_400
export const climateAxis = { fromS: Date.UTC(2026, 0, 1) / 1000, toS: Date.UTC(2028, 0, 1) / 1000 }

/** Two years of temperature, with a gap and two days on which blocks were broken. */
export function madePanel(change: Partial<ClimatePanel> = {}): ClimatePanel {
  const inGap = (d: number) => d > 300 && d < 340
  const days = Array.from({ length: 730 }, (_, d) => d).filter((d) => !inGap(d))
  const mean = (d: number) => 10 - 10 * Math.cos((2 * Math.PI * d) / 365)
  const values = (at: (d: number) => number) => Float64Array.from(days, at)
  return {
    ...{
      name: 'temperature',
      store: 'exposure loft',
      quantity: quantitiesIn('SI').temperature,
      keys: true,
      axis: climateAxis,
    },
    band: {
      timeS: values((d) => climateAxis.fromS + d * day),
      ...{ min: values((d) => mean(d) - 4), mean: values(mean), max: values((d) => mean(d) + 5) },
    },
    gaps: [{ fromS: climateAxis.fromS + 300 * day, toS: climateAxis.fromS + 340 * day }],
    days: [
      { timeS: climateAxis.fromS + 20 * day, name: 'first block glued' },
      { timeS: climateAxis.fromS + 385 * day, name: 'blocks 12 months old broken' },
      { timeS: climateAxis.fromS + 720 * day, name: 'pull of blocks 24 months old', isToCome: true },
    ],
    ...change,
  }
}

/** A series of three ages, the last with a single block. */
export const madeSeries: StoredSeries = {
  ...{ key: 'C1', adhesive: 'casein C1', jointType: 'lap', bondLineGapMm: 0, exposure: 'loft', simulated: false },
  gluedS: climateAxis.fromS + 20 * day,
  ages: [
    { ageMonths: 0, brokenS: climateAxis.fromS + 21 * day, n: 12, meanMPa: 9.4, lowMPa: 8.9, highMPa: 9.9 },
    { ageMonths: 6, brokenS: climateAxis.fromS + 200 * day, n: 12, meanMPa: 9, lowMPa: 8.4, highMPa: 9.6 },
    { ageMonths: 12, brokenS: climateAxis.fromS + 385 * day, n: 1, meanMPa: 8.2, lowMPa: null, highMPa: null },
  ],
}
