import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { createViewedCurve } from '#renderer/plots/recorded/viewedCurve.ts'
import type { Span } from '#renderer/plots/zoom.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

/** A curve of a sample a second, as far as it is asked for. */
function source(asked: (Span | null)[]) {
  return async (span: Span | null): Promise<ForceCurve> => {
    asked.push(span)
    const timeS = Float64Array.from({ length: 11 }, (_, i) => i).filter(
      (at) => span === null || (at >= span.fromS && at <= span.toS),
    )
    return { timeS, force: timeS.map((at) => at * 10), unit: 'N', samples: timeS.length }
  }
}

async function viewed() {
  const asked: (Span | null)[] = []
  const told = { view: 0, beside: 0 }
  const curve = createViewedCurve({
    load: source(asked),
    maxPoints: () => 400,
    onView: () => told.view++,
    onBeside: () => told.beside++,
  })
  curve.begin()
  await vi.runAllTimersAsync()
  return { curve, asked, told }
}

const part = { fromS: 2, toS: 4 }

it('shows the whole curve first', async () => {
  const { curve, told } = await viewed()
  expect(curve.view()).toMatchObject({ span: { fromS: 0, toS: 10 }, whole: { fromS: 0, toS: 10 } })
  expect(curve.curve()?.samples).toBe(11)
  expect(told.view).toBe(1)
})

it('asks for finer samples once, when the view stands still', async () => {
  const { curve, asked } = await viewed()
  curve.show({ fromS: 1, toS: 9 })
  curve.show({ fromS: 2, toS: 8 })
  curve.show(part)
  expect(asked).toEqual([null])
  await vi.runAllTimersAsync()
  expect(asked).toEqual([null, part])
  expect(curve.curve()?.samples).toBe(3)
})

it('asks nothing to show all again', async () => {
  const { curve, asked } = await viewed()
  curve.show(part)
  await vi.runAllTimersAsync()
  curve.show(null)
  await vi.runAllTimersAsync()
  expect(asked).toEqual([null, part])
  expect(curve.curve()?.samples).toBe(11)
})

it('still takes the whole curve when all is asked for before it has come', async () => {
  const curve = createViewedCurve({ load: source([]), maxPoints: () => 400, onView: () => {}, onBeside: () => {} })
  curve.begin()
  curve.show(null)
  await vi.runAllTimersAsync()
  expect(curve.curve()?.samples).toBe(11)
})

it('fetches a second curve for the stretch in view, and its whole only when that is shown', async () => {
  const { curve, told } = await viewed()
  const asked: (Span | null)[] = []
  curve.show(part)
  await vi.runAllTimersAsync()
  curve.setBeside(source(asked))
  await vi.runAllTimersAsync()
  expect(curve.beside()?.samples).toBe(3)
  curve.show(null)
  await vi.runAllTimersAsync()
  expect(curve.beside()?.samples).toBe(11)
  expect(asked).toEqual([part, null])
  expect(told.beside).toBe(2)
  curve.setBeside(null)
  expect(curve.beside()).toBeNull()
  expect(told.beside).toBe(3)
})

it('asks for nothing after its end', async () => {
  const { curve, asked } = await viewed()
  curve.show(part)
  curve.end()
  await vi.runAllTimersAsync()
  expect(asked).toEqual([null])
})
