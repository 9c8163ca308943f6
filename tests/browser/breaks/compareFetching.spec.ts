import { describe, expect, it, onTestFinished } from 'vitest'
import { cutToRange, thinByMinMax } from '#domain/signal/stream/thinning.ts'
import { scriptComparison } from '#tests/fakes/scripted/scriptedComparison.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { openPage } from '../harness/openPage.ts'
import { at, settle } from '../screens/screenSteps.ts'
import { withHistory } from '../screens/withHistory.ts'

type CurveQuestion = { breakId: number; fromS: number | null; toS: number | null; maxPoints: number | null }
const samples = 400_000

/** A host whose curves have more samples than are sent at once, and which notes what it is asked. */
function hostOfLongCurves(breaks: number): { host: ScriptedHost; asked: CurveQuestion[]; release(): void } {
  const host = scriptComparison(withHistory(createScriptedHost(), breaks))
  const asked: CurveQuestion[] = []
  const timeS = Float64Array.from({ length: samples }, (_, i) => (11 * i) / samples)
  const force = timeS.map((time, i) => 400 * time + (i % 7))
  let release = () => {}
  const held = new Promise<void>((resolve) => {
    release = resolve
  })
  Object.assign(host.handlers, {
    'breaks.curve': async (question: CurveQuestion) => {
      asked.push(question)
      if (question.breakId === 3) await held
      const cut = cutToRange({ timeS, force }, question.fromS, question.toS)
      const { timeS: times, force: forces } = thinByMinMax(cut, question.maxPoints ?? samples)
      return { timeS: times.slice(), force: forces.slice(), unit: 'N', samples }
    },
  })
  return { host, asked, release: () => release() }
}

describe.skipIf(chromiumPath === null)('the curves of a comparison', () => {
  it('are asked for once more, finer, where one zooms in, and only once for a view', async () => {
    const { host, asked } = hostOfLongCurves(2)
    const { page, problems, close } = await openPage({ host: 'loopback', engine: host })
    onTestFinished(close)
    await at('#/compare/1,2')(page)
    await page.locator('.compare-tasks').waitFor({ state: 'detached' })
    expect(asked.map(({ breakId, fromS }) => [breakId, fromS])).toEqual([
      [1, null],
      [2, null],
    ])
    await page.getByRole('application').focus()
    for (let i = 0; i < 9; i++) await page.keyboard.press('+')
    await expect.poll(() => asked.length).toBe(4)
    const [one, other] = asked.slice(2)
    expect([one!.breakId, other!.breakId]).toEqual([1, 2])
    expect(one!.toS! - one!.fromS!).toBeLessThan(0.2)
    // A little farther on lies within what has come.
    await settle(page)
    await page.keyboard.press('+')
    await settle(page)
    expect(asked).toHaveLength(4)
    expect(problems).toEqual([])
  })

  it('are drawn as they come; fetching is stopped and taken up again', async () => {
    const { host, asked, release } = hostOfLongCurves(4)
    const { page, problems, close } = await openPage({ host: 'loopback', engine: host })
    onTestFinished(close)
    await at('#/compare/1,2,3,4')(page)
    await page.getByText('Curves 2 of 4').waitFor()
    await page.getByRole('button', { name: 'Stop' }).click()
    await page.getByText('2 of 4 curves are drawn.').waitFor()
    release()
    await page.getByRole('button', { name: 'Fetch the rest' }).click()
    await page.locator('.compare-tasks').waitFor({ state: 'detached' })
    expect(new Set(asked.map(({ breakId }) => breakId))).toEqual(new Set([1, 2, 3, 4]))
    expect(asked.filter(({ breakId }) => breakId === 1)).toHaveLength(1)
    expect(problems).toEqual([])
  })
})
