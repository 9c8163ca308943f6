import { median } from '#domain/numbers/quantile.ts'
import { boxMean } from './boxMean.ts'
import type { FacePixels } from './facePixels.ts'
import { otsuThreshold } from './otsuThreshold.ts'
import { type Plane, planeOf } from './planes.ts'
import { filledFromAround, outsideGlare } from './shine.ts'
import { freeOfBorder, type SurfaceFeatures, surfaceFeatures } from './surfaceFeatures.ts'
import { along, type TwoClasses, twoClassesFrom } from './twoClasses.ts'

/** Which version of the proposal this is; another computation is another name. */
export const tornWoodMethod = 'colour, else texture 1'

/** What told the two surfaces of a face apart. */
export type SurfacesTold = 'colour' | 'texture' | 'neither'

/** How much each pixel of a face looks like torn wood: 0 glue to 100 wood, and the limit above which it is proposed as torn. */
export type TornScores = { readonly scores: Plane; readonly limit: number; readonly told: SurfacesTold }

/** Separation and distance of two classes of colour from which they are two surfaces; one surface split in half has 1.8 and 2.7. */
const toldBySeparation = 4
const toldByDistance = 4.2
/** Distance of two classes of texture, in SDs, from which they are two surfaces. */
const toldByTexture = 3.2
/** Classes are found from every so many pixels along each side; neighbours say the same. */
const stride = 3
/** This share of the longer side along each edge names no class: corners are marked by hand, and what lies beyond is bench. */
const edgeShare = 0.02

function sampleOf(counts: Plane): Int32Array {
  const { width, height, values } = counts
  const edge = Math.round(edgeShare * Math.max(width, height))
  const places: number[] = []
  for (let y = edge; y < height - edge; y += stride)
    for (let x = edge; x < width - edge; x += stride) if (values[y * width + x] === 1) places.push(y * width + x)
  return Int32Array.from(places)
}

/** Fewer pixels than this that are no glare say nothing of a face. */
const fewestPixels = 100

const taken = (plane: Plane, sample: Int32Array) => Float32Array.from(sample, (at) => plane.values[at]!)

/** The best separated classes of colour; with luminance where colour ratios alone do not tell them apart, as shadows move it. */
function* classesOfColour(
  { redGreen, blueGreen, luminance, texture }: SurfaceFeatures,
  sample: Int32Array,
): Generator<void, { classes: TwoClasses; planes: readonly Plane[] } | null> {
  if (sample.length < fewestPixels) return null
  const seed = taken(texture, sample)
  for (const planes of [
    [redGreen, blueGreen],
    [redGreen, blueGreen, luminance],
  ]) {
    const features = planes.map((plane) => taken(plane, sample))
    let best: TwoClasses | null = null
    for (const start of [seed, ...features]) {
      const classes = yield* twoClassesFrom(features, start)
      if (classes !== null && classes.separation > (best?.separation ?? 0)) best = classes
    }
    if (best !== null && best.separation > toldBySeparation && best.distance > toldByDistance)
      return { classes: best, planes }
  }
  return null
}

/**
 * Median roughness of the pixels of a class whose surroundings are of that class; of fewer surroundings where there are none such. The
 * median, because shine draws a few very rough streaks on glue.
 */
function roughnessWithin(roughness: Plane, isMember: Plane): number {
  for (const radius of [freeOfBorder, 3, 0]) {
    const inner = boxMean(isMember, radius)
    const found: number[] = []
    for (let i = 0; i < inner.values.length; i += stride)
      if (inner.values[i]! > 1 - 1e-4) found.push(roughness.values[i]!)
    if (found.length >= 50) return median(found)
  }
  return 0
}

/** Scores by colour: torn is the class that is rougher inside. */
function* scoresByColour(
  features: SurfaceFeatures,
  counts: Plane,
  { classes, planes }: { classes: TwoClasses; planes: readonly Plane[] },
): Generator<void, Plane> {
  const { discriminant, distance } = classes
  const values = planes.map((plane) => plane.values)
  const place = planeOf(counts, (i) => (along(discriminant, values, i) - discriminant.firstMean) / distance)
  yield
  const member = (second: boolean) =>
    planeOf(counts, (i) => (counts.values[i] === 1 && place.values[i]! > 0.5 === second ? 1 : 0))
  const firstRough = roughnessWithin(features.roughness, member(false))
  yield
  const secondIsTorn = roughnessWithin(features.roughness, member(true)) > firstRough
  yield
  return planeOf(counts, (i) => 25 + 50 * (secondIsTorn ? place.values[i]! : 1 - place.values[i]!))
}

/** Mean and variance of values on one side of a limit. */
function sideOf(values: Float32Array, counts: (value: number) => boolean) {
  const side = values.filter(counts)
  const mean = side.reduce((sum, value) => sum + value, 0) / side.length
  return { mean, squares: side.reduce((sum, value) => sum + (value - mean) ** 2, 0) }
}

function scoresByTexture(texture: Plane, sample: Int32Array): Omit<TornScores, 'scores'> & { place: Plane } {
  const values = taken(texture, sample)
  const limit = values.length < fewestPixels ? null : otsuThreshold(values)
  if (limit === null) return { place: planeOf(texture, () => 50), limit: 50, told: 'neither' }
  const smooth = sideOf(values, (value) => value <= limit)
  const rough = sideOf(values, (value) => value > limit)
  const apart = rough.mean - smooth.mean
  const spread = Math.sqrt((smooth.squares + rough.squares) / values.length)
  const scoreOf = (value: number) => 25 + (50 * (value - smooth.mean)) / apart
  return {
    place: planeOf(texture, (i) => scoreOf(texture.values[i]!)),
    limit: scoreOf(limit),
    told: apart > toldByTexture * spread ? 'texture' : 'neither',
  }
}

/**
 * How much each pixel of a broken face looks like torn wood, by colour where it separates two surfaces, else by texture; yields between
 * steps of some milliseconds. Glue lies about 25 and wood about 75. Where neither tells two surfaces apart, the scores are those of
 * texture and a limit is no proposal.
 *
 * Checked: tests/soak/faces.ts, faces drawn with a known share of torn wood.
 */
export function* tornScores(face: FacePixels): Generator<void, TornScores> {
  const counts = outsideGlare(face)
  yield
  const features = yield* surfaceFeatures(face)
  const sample = sampleOf(counts)
  const colour = yield* classesOfColour(features, sample)
  const { place, limit, told } =
    colour === null
      ? scoresByTexture(features.texture, sample)
      : { place: yield* scoresByColour(features, counts, colour), limit: 50, told: 'colour' as const }
  yield
  const within = planeOf(place, (i) => Math.min(100, Math.max(0, place.values[i]!)))
  return { scores: yield* filledFromAround(within, counts), limit, told }
}
