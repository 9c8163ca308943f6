import jsQR from 'jsqr'
import { expect, it } from 'vitest'
import { qrCode } from '#exchange/labels/qrCode.ts'

/** The outline filled, each module some pixels wide, as jsqr takes it. */
function read(text: string): { data: string | undefined; sideModules: number } {
  const { path, sideModules } = qrCode(text)
  const pixels = 4
  const side = sideModules * pixels
  const image = new Uint8ClampedArray(side * side * 4).fill(255)
  for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let row = Number(y) * pixels; row < (Number(y) + 1) * pixels; row++)
      for (let column = Number(x) * pixels; column < (Number(x) + Number(width)) * pixels; column++)
        image.fill(0, 4 * (row * side + column), 4 * (row * side + column) + 3)
  return { data: jsQR(image, side, side)?.data, sideModules }
}

it('is read by another decoder as the number alone', () => {
  for (const number of ['28', '7940', '12345678', 'C1-LL-03', 'Größe 7 木'])
    expect(read(number).data, number).toBe(number)
})

it('is the smallest code with a border of four modules for all our own numbers', () => {
  expect(read('99999993').sideModules).toBe(21 + 8)
})

it('takes a longer number in larger modules than the highest correction would leave', () => {
  const long = 'Block 12 of the old bench, series B'
  expect(read(long)).toEqual({ data: long, sideModules: 29 + 8 })
})

it('leaves the border free', () => {
  const starts = [...qrCode('7940').path.matchAll(/M(\d+) (\d+)h(\d+)/g)].map(([, x, y, width]) => [
    Number(x),
    Number(y),
    Number(x) + Number(width),
  ])
  expect(starts.every(([x, y, end]) => x! >= 4 && y! >= 4 && y! < 25 && end! <= 25)).toBe(true)
})
