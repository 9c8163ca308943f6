import { describe, expect, it } from 'vitest'
import { controlChart, controlChartOf } from '#figures/calibration/controlChart.ts'
import type { Figure } from '#figures/drawing/figure.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const size = { widthPx: 700, emPx: 12 }

async function historyOf(count: number, lastOffN: number) {
  const host = createScriptedHost()
  host.calibration.withChecks(count, lastOffN)
  const [history] = (await host.handlers['checkWeight.history']({ calibrationId: null })).rows
  return history!
}

const labels = ({ marks }: Figure, ink: string) =>
  marks.flatMap((mark) => (mark.kind === 'text' && mark.ink === ink ? [mark.text] : []))

describe('controlChart', () => {
  it('rings the check that lies outside its limits, and says so', async () => {
    const figure = controlChart(controlChartOf(await historyOf(17, 0.92), 'individuals')!, force, size)
    const ringed = figure.marks.flatMap((mark) =>
      mark.kind === 'named' && mark.marks.some(({ kind }) => kind === 'circle') ? [mark.words] : [],
    )
    expect(ringed).toEqual([expect.stringMatching(/^17, .*outside$/)])
    expect(figure.description).toMatch(/Outside: check 17\.$/)
  })
  it('draws both limits and the centre', async () => {
    const figure = controlChart(controlChartOf(await historyOf(17, 0.04), 'individuals')!, force, size)
    expect(labels(figure, 'label')).toEqual(expect.arrayContaining(['centre', 'upper limit', 'lower limit']))
  })
  it('shows forces in the chosen unit', async () => {
    const chart = controlChartOf(await historyOf(17, 0.92), 'individuals')!
    const figure = controlChart(chart, quantitiesIn('US').force, size)
    expect(figure.readings.at(-1)?.words).toContain('+0.21\u00a0lbf')
    expect(labels(figure, 'title')).toContain('read minus expected, lbf')
  })
})

describe('controlChartOf', () => {
  it('numbers the weighted average by the checks that it follows', async () => {
    expect(controlChartOf(await historyOf(17, 0.04), 'ewma')?.xNames).toEqual(
      Array.from({ length: 9 }, (_, index) => String(index + 9)),
    )
    expect(controlChartOf(await historyOf(8, 0.04), 'ewma')).toBeNull()
  })
  it('puts every moving range under the later of its two checks, without a lower limit', async () => {
    const chart = controlChartOf(await historyOf(10, 0.04), 'ranges')!
    expect(chart.values).toHaveLength(9)
    expect(chart.values[0]!.said).toBe('1 to 2')
    expect(chart.limitsN?.[0]).toBeNull()
    const { readings, marks } = controlChart(chart, force, size)
    const two = marks.find((mark) => mark.kind === 'text' && mark.text === '2')
    expect(two).toMatchObject({ x: readings[0]!.x })
  })
})
