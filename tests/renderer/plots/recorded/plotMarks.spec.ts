import type uPlot from 'uplot'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { drawMarks, type PointMark } from '#renderer/plots/recorded/plotMarks.ts'

const colours = {
  ...{ ink: 'ink', quiet: '', grid: '', curve: '', marker: '', warning: '', alarm: '', ground: '' },
  font: '12px sans-serif',
}

/** Where each name is written, its middle; on a plot of 400 x 200 whose units are pixels, letters 7 wide. */
function namesOf(marks: readonly PointMark[], standing: Parameters<typeof drawMarks>[3] = []) {
  const written = new Map<string, { x: number; y: number }>()
  const nothing = () => {}
  const ctx = {
    ...{ save: nothing, restore: nothing, beginPath: nothing, moveTo: nothing, lineTo: nothing, arc: nothing },
    ...{ rect: nothing, closePath: nothing, fill: nothing, stroke: nothing, fillRect: nothing },
    measureText: (text: string) => ({ width: 7 * text.length }),
    fillText: (text: string, x: number, y: number) => void written.set(text, { x, y }),
  }
  const plot = {
    ctx,
    bbox: { left: 0, top: 0, width: 400, height: 200 },
    valToPos: (value: number, axis: string) => (axis === 'x' ? value : 200 - value),
  }
  drawMarks(plot as unknown as uPlot, marks, colours, standing)
  return written
}

beforeEach(() => {
  vi.stubGlobal('devicePixelRatio', 1)
})
afterEach(() => {
  vi.unstubAllGlobals()
})

const seated: PointMark = { timeS: 100, value: 20, label: 'seated', shape: 'event' }

it('names a mark clear of the name of the level at rest', () => {
  const free = namesOf([seated]).get('seated')!
  const level = { x: free.x + 20, y: free.y + 4, width: 120 }
  expect(Math.abs(namesOf([seated], [level]).get('seated')!.y - level.y)).toBeGreaterThanOrEqual(18)
})

it('names an event clear of the mark of another', () => {
  const free = namesOf([seated]).get('seated')!
  const other: PointMark = { timeS: free.x + 20, value: 200 - free.y, label: 'spike', shape: 'event' }
  expect(Math.abs(namesOf([seated, other]).get('seated')!.y - free.y)).toBeGreaterThanOrEqual(18)
})

it('leaves the name of a peak where it stands, whatever is marked beside it', () => {
  const peak: PointMark = { timeS: 200, value: 150, label: 'peak 150 N', shape: 'peak' }
  const free = namesOf([peak]).get('peak 150 N')!
  const beside: PointMark = { timeS: 190, value: 200 - free.y, label: 'plateau', shape: 'event' }
  expect(namesOf([beside, peak]).get('peak 150 N')).toEqual(free)
})
