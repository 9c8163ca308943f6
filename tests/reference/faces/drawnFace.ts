import { createRandom, type RandomStream } from '#domain/numbers/random.ts'
import { type FaceCorners, homographyOf } from '#domain/strength/face/homography.ts'
import { smoothNoise } from './smoothNoise.ts'

/** What makes a drawn face hard to read. */
export const difficulties = [
  'plain',
  'shadow',
  'shine',
  'noise',
  'perspective',
  'little torn',
  'mostly torn',
  'glue of wood colour',
  'smooth wood',
  'all at once',
  'one surface alone',
] as const
export type Difficulty = (typeof difficulties)[number]

/** A drawn photograph of a broken face, with the truth that it was drawn from. */
export type DrawnFace = {
  width: number
  height: number
  /** Red, green, blue and opacity of each pixel, sRGB. */
  pixels: Uint8ClampedArray<ArrayBuffer>
  /** The bonded area as a person would mark it: within half a percent of the picture. */
  corners: FaceCorners
  /** Width of the bonded area divided by its height. */
  proportion: number
  tornPercent: number
}

type Rgb = readonly [number, number, number]

// Linear light. Light and dark woods; glues from cream over amber and red-brown to nearly black.
const woods: readonly Rgb[] = [
  [0.55, 0.38, 0.2],
  [0.62, 0.47, 0.3],
  [0.4, 0.25, 0.13],
  [0.33, 0.16, 0.09],
  [0.7, 0.55, 0.36],
]
const glues: readonly Rgb[] = [
  [0.14, 0.045, 0.03],
  [0.6, 0.56, 0.45],
  [0.36, 0.2, 0.05],
  [0.06, 0.055, 0.05],
  [0.42, 0.43, 0.4],
]

type Look = {
  wood: Rgb
  glue: Rgb
  grainAmplitude: number
  shadowDepth: number
  shine: number
  noise: number
  tilt: number
  torn: number
}

function lookOf(difficulty: Difficulty, random: RandomStream): Look {
  const pick = <T>(values: readonly T[]) => values[random.wholeBetween(0, values.length - 1)]!
  const all = difficulty === 'all at once'
  const wood = pick(woods)
  const tint = random.between(0.85, 0.97)
  return {
    wood,
    glue: difficulty === 'glue of wood colour' ? [wood[0] * tint, wood[1] * tint, wood[2] * tint] : pick(glues),
    grainAmplitude: difficulty === 'smooth wood' ? random.between(0.05, 0.09) : random.between(0.15, 0.3),
    shadowDepth: all || difficulty === 'shadow' ? random.between(0.4, 0.65) : random.between(0, 0.1),
    shine: all || difficulty === 'shine' ? random.between(0.4, 1.2) : 0,
    noise: all || difficulty === 'noise' ? random.between(0.025, 0.05) : random.between(0.004, 0.012),
    tilt: all || difficulty === 'perspective' ? random.between(0.1, 0.2) : random.between(0, 0.03),
    torn:
      difficulty === 'one surface alone'
        ? random.wholeBetween(0, 1)
        : difficulty === 'little torn'
          ? random.between(0.02, 0.1)
          : difficulty === 'mostly torn'
            ? random.between(0.9, 0.98)
            : random.between(0.12, 0.88),
  }
}

/** Which places of the area are torn, as a field of places of the area in 0..1, and the share of them. */
function tornField(wanted: number, random: RandomStream): { torn: (u: number, v: number) => boolean; share: number } {
  const [large, middle, small] = [smoothNoise(random), smoothNoise(random), smoothNoise(random)]
  const along = random.between(1.5, 3)
  const height = (u: number, v: number) =>
    large(along * u, 2.2 * along * v) +
    0.5 * middle(3 * along * u, 7 * along * v) +
    0.2 * small(8 * along * u, 24 * along * v)
  const n = 200
  const heights = Float32Array.from({ length: n * n }, (_, i) =>
    height(((i % n) + 0.5) / n, (Math.floor(i / n) + 0.5) / n),
  )
  const limit = heights.toSorted()[Math.round((1 - wanted) * (n * n - 1))]!
  if (wanted === 0 || wanted === 1) return { torn: () => wanted === 1, share: wanted }
  const share = heights.reduce((count, one) => count + (one > limit ? 1 : 0), 0) / (n * n)
  return { torn: (u, v) => height(u, v) > limit, share }
}

/** Light of the surface at a place of the area: torn wood is fibrous, glue smooth with the print of the planed wood. */
function surface(look: Look, proportion: number, random: RandomStream) {
  const { torn, share } = tornField(look.torn, random)
  const [rings, fibres, splinters, print, streaks, tone] = Array.from({ length: 6 }, () => smoothNoise(random)) as [
    ReturnType<typeof smoothNoise>,
    ReturnType<typeof smoothNoise>,
    ReturnType<typeof smoothNoise>,
    ReturnType<typeof smoothNoise>,
    ReturnType<typeof smoothNoise>,
    ReturnType<typeof smoothNoise>,
  ]
  const at = (u: number, v: number): Rgb => {
    const x = u * proportion
    if (torn(u, v)) {
      const grain =
        look.grainAmplitude *
        (0.5 * rings(2 * x, 12 * v) + 1.2 * fibres(9 * x, 70 * v) + 0.9 * splinters(30 * x, 130 * v))
      const light = Math.exp(grain)
      // Late wood is redder than early wood.
      const red = Math.exp(0.06 * rings(2 * x, 12 * v))
      return [look.wood[0] * light * red, look.wood[1] * light, (look.wood[2] * light) / red]
    }
    const light = Math.exp(0.05 * tone(3 * x, 3 * v) + 0.2 * look.grainAmplitude * print(4 * x, 60 * v))
    const shine = look.shine * Math.max(0, streaks(5 * x, 18 * v) - 0.25) ** 2 * 3
    return [look.glue[0] * light + shine, look.glue[1] * light + shine, look.glue[2] * light + shine]
  }
  return { at, share }
}

/** Light that falls on a place of the picture: a slope, and a soft-edged shadow. */
function lightOver(width: number, height: number, depth: number, random: RandomStream) {
  const angle = random.between(0, 2 * Math.PI)
  const [dx, dy] = [Math.cos(angle) / width, Math.sin(angle) / height]
  const edge = random.between(0.2, 0.8)
  const softness = random.between(0.03, 0.1)
  const slope = random.between(0, 0.25)
  return (x: number, y: number) => {
    const along = dx * (x - width / 2) + dy * (y - height / 2) + 0.5
    return (1 + slope * (along - 0.5)) * (1 - depth / (1 + Math.exp((edge - along) / softness)))
  }
}

function drawnCorners(width: number, height: number, tilt: number, random: RandomStream): FaceCorners {
  const corner = (x: number, y: number) => ({
    x: width * (x + (x < 0.5 ? 1 : -1) * tilt * random.unit()),
    y: height * (y + (y < 0.5 ? 1 : -1) * tilt * random.unit()),
  })
  return [corner(0.08, 0.1), corner(0.92, 0.1), corner(0.92, 0.9), corner(0.08, 0.9)]
}

function inverted(m: readonly number[]): readonly number[] {
  const [a, b, c, d, e, f, g, h, i] = m as [number, number, number, number, number, number, number, number, number]
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ]
}

const sRgb = (light: number) => (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055)

/** Draws the photograph of a face with one kind of difficulty; the same seed draws the same face on every machine. */
export function drawnFace(difficulty: Difficulty, seed: number, width = 640, height = 480): DrawnFace {
  const random = createRandom(seed, difficulties.indexOf(difficulty))
  const look = lookOf(difficulty, random)
  const proportion = (0.84 * width) / (0.8 * height)
  const face = surface(look, proportion, random)
  const light = lightOver(width, height, look.shadowDepth, random)
  const corners = drawnCorners(width, height, look.tilt, random)
  const back = inverted(homographyOf(corners, 1, 1))
  const bench = random.between(0.1, 0.5)
  const upright = random.unit() < 0.5
  const colourAt = (x: number, y: number): Rgb => {
    const w = back[6]! * x + back[7]! * y + back[8]!
    const u = (back[0]! * x + back[1]! * y + back[2]!) / w
    const v = (back[3]! * x + back[4]! * y + back[5]!) / w
    return u >= 0 && u <= 1 && v >= 0 && v <= 1 ? (upright ? face.at(v, u) : face.at(u, v)) : [bench, bench, bench]
  }
  const pixels = new Uint8ClampedArray(4 * width * height)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      // Two by two rays a pixel, as a lens would average.
      const rays = [0.25, 0.75].flatMap((i) => [0.25, 0.75].map((j) => colourAt(x + i, y + j)))
      const falling = light(x + 0.5, y + 0.5) / 4
      for (let k = 0; k < 3; k++) {
        const shown = sRgb(Math.min(1, falling * rays.reduce((sum, ray) => sum + ray[k]!, 0)))
        pixels[4 * (y * width + x) + k] = 255 * (shown + look.noise * random.normal())
      }
      pixels[4 * (y * width + x) + 3] = 255
    }
  const marked = corners.map(({ x, y }) => ({
    x: x + 0.005 * width * random.between(-1, 1),
    y: y + 0.005 * height * random.between(-1, 1),
  })) as unknown as FaceCorners
  return { width, height, pixels, corners: marked, proportion, tornPercent: 100 * face.share }
}
