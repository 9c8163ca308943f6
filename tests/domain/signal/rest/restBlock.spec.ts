import { expect, it } from 'vitest'
import { createRestBlock } from '#domain/signal/rest/restBlock.ts'

it('has mean and variance about its own line as JCGM 100:2008 H.3, whatever the offsets', () => {
  // Data of H.3; mean and s = 0.00349756 recomputed with R 4.2.2: mean(b), summary(lm(b ~ t))$sigma.
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
  for (const [offsetT, offsetB] of [
    [0, 0],
    [1e5, 1e4],
  ] as const) {
    const block = createRestBlock()
    t.forEach((time, i) => {
      block.push(time + offsetT, b[i]! + offsetB)
    })
    expect(block.samples()).toBe(11)
    expect(block.lengthS()).toBeCloseTo(4.99, 9)
    expect(block.mean()).toBeCloseTo(offsetB - 1.787 / 11, 9)
    expect(Math.sqrt(block.varianceAboutLine())).toBeCloseTo(0.00349756, 7)
  }
})

it('is full with 16 samples over 0.2 s, whichever comes later', () => {
  const fullAfter = (rateHz: number) => {
    const block = createRestBlock()
    let samples = 1
    while (!block.push((samples - 1) / rateHz, 0)) samples += 1
    return samples
  }
  expect(fullAfter(10)).toBe(16)
  expect(fullAfter(80)).toBe(17)
  expect(fullAfter(1000)).toBe(201)
})

it('of a straight line has no variance, and starts anew when cleared', () => {
  const block = createRestBlock()
  for (let i = 0; i < 16; i++) block.push(i, 5 * i)
  expect(block.varianceAboutLine()).toBeCloseTo(0, 12)
  block.clear()
  block.push(100, 7)
  block.push(101, 9)
  expect([block.samples(), block.mean(), block.lengthS()]).toEqual([2, 8, 1])
})
