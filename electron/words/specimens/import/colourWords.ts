import { countOf } from '../../units/counts.ts'

/** Colours of less chroma than this (parts of 255) are grey to the eye. */
const greyChroma = 24
/** The hues at which one name gives way to the next, degrees; common practice, no source. */
const hues: readonly [below: number, name: string][] = [
  [15, 'red'],
  [50, 'orange'],
  [68, 'yellow'],
  [160, 'green'],
  [200, 'turquoise'],
  [258, 'blue'],
  [301, 'violet'],
  [340, 'pink'],
  [360, 'red'],
]

/** What a person calls the colour of a cell: "light green", "theme colour 4, lighter"; null is "no colour". */
export function colourName(fill: string | null): string {
  if (fill === null) return 'no colour'
  if (fill === 'pattern') return 'a hatching'
  const theme = /^theme (\d+)(?: ([+-]))?/.exec(fill)
  if (theme !== null)
    return `theme colour ${theme[1]}${theme[2] === undefined ? '' : theme[2] === '+' ? ', lighter' : ', darker'}`
  const [red, green, blue] = [0, 2, 4].map((at) => Number.parseInt(fill.slice(at, at + 2), 16)) as [
    number,
    number,
    number,
  ]
  const [most, least] = [Math.max(red, green, blue), Math.min(red, green, blue)]
  const lightness = (most + least) / 2
  if (most - least < greyChroma) return lightness > 240 ? 'white' : lightness < 30 ? 'black' : `${shade(lightness)}grey`
  const hue = hueOf(red, green, blue, most, most - least)
  const name = hues.find(([below]) => hue < below)?.[1] ?? 'red'
  // What is dark and orange is brown to everybody
  if (name === 'orange' && lightness < 110) return `${lightness < 50 ? 'dark ' : ''}brown`
  return `${shade(lightness)}${name}`
}

function shade(lightness: number): string {
  return lightness > 180 ? 'light ' : lightness < 80 ? 'dark ' : ''
}

/** The angle on the circle of colours, degrees, 0 is red (hexcone model: A. R. Smith, Color Gamut Transform Pairs, 1978). */
function hueOf(red: number, green: number, blue: number, most: number, chroma: number): number {
  if (most === red) return (60 * ((green - blue) / chroma) + 360) % 360
  return most === green ? 60 * ((blue - red) / chroma) + 120 : 60 * ((red - green) / chroma) + 240
}

/** The colours of cells that a mapping may give a meaning to, as it names them, how they look and how often each is there. */
export function coloursFoundWords(fills: readonly { fill: string; count: number }[]): string {
  const each = fills.map(({ fill, count }) => `${fill} (${colourName(fill)}) in ${countOf(count, 'cell')}`)
  return `Colours of cells, for "fills" of the mapping: ${each.join(', ')}.`
}
