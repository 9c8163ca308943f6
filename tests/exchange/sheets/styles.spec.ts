import { describe, expect, it } from 'vitest'
import { gatherStyles } from '#exchange/sheets/styles.ts'
import { readElements } from '#exchange/sheets/xmlElements.ts'

async function stylesOf(xml: string) {
  const styles = gatherStyles()
  await readElements(
    'a.xlsx',
    (async function* () {
      yield `<x:styleSheet>${xml}</x:styleSheet>`
    })(),
    styles,
  )
  return styles.styles()
}

const withFill = (fill: string) =>
  stylesOf(`<x:fills><x:fill>${fill}</x:fill></x:fills><x:cellXfs><x:xf fillId="0"/></x:cellXfs>`)
const solid = (colour: string) =>
  `<x:patternFill patternType="solid"><x:fgColor ${colour}/><x:bgColor rgb="FF00FF00"/></x:patternFill>`

describe('the style of a cell', () => {
  it.each([
    ['solid yellow', solid('rgb="FFFFFF00"'), 'FFFF00'],
    ['solid yellow without its opacity', solid('rgb="ffff00"'), 'FFFF00'],
    ['a theme colour', solid('theme="5"'), 'theme 5'],
    ['a darkened theme colour', solid('theme="5" tint="-0.249977111117893"'), 'theme 5 -0.25'],
    ['number 13 of the old palette', solid('indexed="13"'), 'FFFF00'],
    ['number 5 of the old palette', solid('indexed="5"'), 'FFFF00'],
    ['number 52 of the old palette', solid('indexed="52"'), 'FF9900'],
    ['the colour of the system', solid('indexed="64"'), 'pattern'],
    ['a hatching', '<x:patternFill patternType="gray125"><x:fgColor rgb="FFFF0000"/></x:patternFill>', 'pattern'],
    ['a gradient', '<x:gradientFill><x:stop><x:color rgb="FFFF0000"/></x:stop></x:gradientFill>', 'pattern'],
    ['no pattern', '<x:patternFill patternType="none"><x:fgColor rgb="FFFF0000"/></x:patternFill>', null],
  ])('has %s', async (_, fill, code) => {
    expect((await withFill(fill))[0]!.fill).toBe(code)
  })

  it('is one of those of cells, neither a named style nor a format for conditions', async () => {
    const styles = await stylesOf(
      `<x:numFmts><x:numFmt numFmtId="164" formatCode="0&quot; kN&quot;"/></x:numFmts>
       <x:cellStyleXfs><x:xf numFmtId="14"/></x:cellStyleXfs><x:cellXfs><x:xf numFmtId="164"/><x:xf numFmtId="9"/></x:cellXfs>
       <x:dxfs><x:dxf><x:fill>${solid('rgb="FFFF0000"')}</x:fill></x:dxf></x:dxfs>`,
    )
    expect(styles.map(({ format }) => format.unit)).toEqual(['kN', '%'])
    expect(styles.map(({ fill }) => fill)).toEqual([null, null])
  })
})
