import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { onScaleTones, scaleTones } from '#figures/drawing/scaleTones.ts'
import { projectFolder } from '#shells/start/build.ts'

/**
 * What an eye without one kind of cone sees of linear red, green and blue. Source: Machado, Oliveira and Fernandes, A physiologically-based
 * model for simulation of color vision deficiency, IEEE Transactions on Visualization and Computer Graphics 15 (2009), 1291-1298,
 * table for severity 1.0.
 */
const seenBy = {
  'a full set of cones': [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const

/** Linear red, green and blue. Source: IEC 61966-2-1 (sRGB). */
function linear(hex: string): [number, number, number] {
  const channel = (at: number) => {
    const encoded = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4
  }
  return [channel(1), channel(3), channel(5)]
}

/** Relative luminance, 0 to 1. Source: WCAG 2.2, definition of relative luminance. */
function luminance(hex: string, matrix: readonly number[] = seenBy['a full set of cones']): number {
  const rgb = linear(hex)
  const seen = (row: number) =>
    Math.min(
      Math.max(
        rgb.reduce((sum, value, i) => sum + matrix[3 * row + i]! * value, 0),
        0,
      ),
      1,
    )
  return 0.2126 * seen(0) + 0.7152 * seen(1) + 0.0722 * seen(2)
}

/** CIE 1976 lightness, 0 to 100. Source: ISO/CIE 11664-4. */
const lightness = (y: number) => (y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27)

/** Contrast of two colours. Source: WCAG 2.2, definition of contrast ratio. */
function contrast(one: string, other: string): number {
  const [darker, lighter] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (lighter! + 0.05) / (darker! + 0.05)
}

const sheet = readFileSync(join(projectFolder, 'renderer/theme/tokens.css'), 'utf8')
/** The colours of a theme on screens, by their names. */
function theme(name: 'light' | 'dark'): (token: string) => string {
  const blocks = [...sheet.matchAll(new RegExp(`:root\\[data-theme="${name}"\\] \\{([^}]*)\\}`, 'g'))].map(
    ([, block]) => block,
  )
  return (token) => new RegExp(`--${token}: (#[0-9a-f]{6});`).exec(blocks.join(''))![1]!
}

const steps = [1, 2, 3, 4, 5, 6]
const themes = (['light', 'dark'] as const).map((name) => {
  const colour = theme(name)
  return {
    name,
    grounds: [colour('paper'), colour('card')],
    scale: steps.map((step) => colour(`scale-${step}`)),
    on: steps.map((step) => colour(`on-scale-${step}`)),
    towards: name === 'light' ? -1 : 1,
  }
})

describe.each(themes)('the colour scale of the $name theme', ({ grounds, scale, on, towards }) => {
  it.each(Object.entries(seenBy))('goes one way in lightness, by steps that can be told, for %s', (_name, matrix) => {
    const seen = scale.map((hex) => lightness(luminance(hex, matrix)))
    // 2.3 is the least difference that is noticed; small marks side by side want twice that
    for (const [i, value] of seen.slice(1).entries()) expect(towards * (value - seen[i]!)).toBeGreaterThan(4.6)
  })
  it('stands out from its ground, weak and strong alike', () => {
    for (const hex of scale) for (const ground of grounds) expect(contrast(hex, ground)).toBeGreaterThan(3)
  })
  it('carries its numbers so that they are read', () => {
    for (const [i, hex] of scale.entries()) expect(contrast(hex, on[i]!)).toBeGreaterThan(4.5)
  })
})

it('is on paper what it is in the light theme', () => {
  expect(Object.values(scaleTones)).toEqual(themes[0]!.scale)
  expect(Object.values(onScaleTones)).toEqual(themes[0]!.on)
})
