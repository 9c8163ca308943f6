import { describe, expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import type { Mark } from '#figures/drawing/mark.ts'
import { marksText, svgFile, svgText } from '#figures/drawing/svgText.ts'

const figure = (marks: readonly Mark[], change: Partial<Figure> = {}): Figure => ({
  ...{ widthPx: 300, heightPx: 120, emPx: 12, title: 'Load', description: 'Load over time.', marks, readings: [] },
  ...change,
})

describe('svgText', () => {
  it('says what the figure shows before anything is drawn', () => {
    expect(svgText(figure([]))).toMatch(
      /^<svg [^>]*viewBox="0 0 300 120"[^>]*><title>Load<\/title><desc>Load over time.<\/desc><\/svg>$/,
    )
  })
  it('escapes words wherever they stand', () => {
    const hostile = '</svg><script>x</script>"'
    const text = svgText(
      figure(
        [
          { kind: 'text', ink: 'label', x: 1, y: 1, text: hostile, anchor: 'start' },
          { kind: 'named', words: hostile, marks: [] },
          { kind: 'path', ink: 'curve', d: hostile },
        ],
        { title: hostile, description: hostile },
      ),
    )
    expect(text.match(/<\/svg>/g)).toHaveLength(1)
    expect(text).not.toContain('<script')
  })
  it('carries no inline style, which a page of ours would refuse', () => {
    const marks: Mark[] = [{ kind: 'circle', ink: 'ring', x: 1, y: 2, r: 3 }]
    expect(svgText(figure(marks))).not.toMatch(/style/)
  })
  it('refuses a place that is not finite', () => {
    expect(() => marksText([{ kind: 'circle', ink: 'ring', x: Number.NaN, y: 2, r: 3 }])).toThrow(RangeError)
  })
})

describe('marksText', () => {
  it('draws no line across a point that is not known', () => {
    const through = [1, 2, Number.NaN, 4, 5].map((y, x) => ({ x, y }))
    expect(marksText([{ kind: 'line', ink: 'curve', through }])).toContain('d="M0,1L1,2M3,4L4,5"')
  })
  it('tells what belongs together when it is pointed at', () => {
    const marks: Mark[] = [
      { kind: 'named', words: 'Reading 1', marks: [{ kind: 'band', ink: 'gap', x: 1, y: 2, width: 3, height: 4 }] },
    ]
    expect(marksText(marks)).toMatch(/^<g><title>Reading 1<\/title><rect class="ink-gap"[^>]*\/><\/g>$/)
  })
  it('writes a straight line by its ends, to a hundredth of a pixel', () => {
    expect(marksText([{ kind: 'rule', ink: 'zero', from: { x: 1.23456, y: 0 }, to: { x: 9, y: 0 } }])).toContain(
      'd="M1.23 0L9 0"',
    )
  })
})

describe('svgFile', () => {
  const marks: Mark[] = [
    { kind: 'moved', by: { x: 5, y: 6 }, marks: [{ kind: 'circle', ink: 'hollow', x: 1, y: 2, r: 3 }] },
  ]
  it('says every colour at the mark itself, so that any program shows it as it is', () => {
    const text = svgFile(figure(marks))
    expect(text).toContain('<g transform="translate(5 6)"><circle')
    expect(text).toMatch(
      /<circle [^>]*fill="#ffffff"[^>]*stroke="#0e5a61"|<circle [^>]*stroke="#0e5a61"[^>]*fill="#ffffff"/,
    )
    expect(text).not.toMatch(/var\(|class="ink|<style/)
    expect(text).toMatch(/<svg [^>]*font-family="Roboto,/)
  })
  it('carries the typefaces that it is given', () => {
    expect(svgFile(figure([]), '@font-face{src:url("data:x")}')).toContain('<style>@font-face{')
  })
})
