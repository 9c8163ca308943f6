import { describe, expect, it } from 'vitest'
import { checkChart, movingRangeChart } from '#renderer/pages/calibration/checkWeight/checkChart.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')

async function historyOf(count: number, lastOffN: number) {
  const host = createScriptedHost()
  host.calibration.withChecks(count, lastOffN)
  const [history] = await host.handlers['checkWeight.history']({ calibrationId: null })
  return history!
}

describe('checkChart', () => {
  it('rings the check that lies outside its limits, and says so', async () => {
    const chart = checkChart(await historyOf(17, 0.92), 'individuals', force)!
    expect(chart.points.map(({ ringed }) => ringed).lastIndexOf(true)).toBe(16)
    expect(chart.points.filter(({ ringed }) => ringed)).toHaveLength(1)
    expect(chart.points.at(-1)?.title).toContain('outside')
  })
  it('draws both limits and the centre', async () => {
    const labels = checkChart(await historyOf(17, 0.04), 'individuals', force)!.levels.map(({ label }) => label)
    expect(labels).toEqual(expect.arrayContaining(['centre', 'upper limit', 'lower limit']))
  })
  it('numbers the weighted average by the checks that it follows', async () => {
    expect(checkChart(await historyOf(17, 0.04), 'ewma', force)?.xNames).toEqual(
      Array.from({ length: 9 }, (_, index) => String(index + 9)),
    )
    expect(checkChart(await historyOf(8, 0.04), 'ewma', force)).toBeNull()
  })
})

it('puts every moving range under the later of its two checks', async () => {
  const chart = movingRangeChart(await historyOf(10, 0.04), force)!
  expect(chart.points).toHaveLength(9)
  expect(chart.points[0]).toMatchObject({ x: 1, title: expect.stringMatching(/^1 to 2/) })
})
