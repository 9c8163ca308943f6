import { expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { straightened } from '#domain/strength/face/facePixels.ts'
import { planeOf } from '#domain/strength/face/planes.ts'
import { tornMask, tornPercent } from '#domain/strength/face/tornMask.ts'
import { tornScores } from '#domain/strength/face/tornScores.ts'
import { type Difficulty, drawnFace } from '#tests/reference/faces/drawnFace.ts'
import { outcomeOf } from '#tests/reference/faces/outcomeOf.ts'

const size = { width: 240, height: 180 }

/** A face whose left quarter is striped as wood is and whose rest is smooth, each in its colour. */
function quartered(wood: readonly number[], glue: readonly number[], shadowFrom = 300) {
  const random = createRandom(9)
  const light = Float32Array.from({ length: size.width * size.height }, (_, i) => {
    const [x, y] = [i % size.width, Math.floor(i / size.width)]
    const own = x < 60 ? 0.2 * Math.sin(y / 1.3 + Math.sin(x / 9)) + 0.1 * random.normal() : 0.02 * random.normal()
    return Math.exp(own) * (x >= shadowFrom ? 0.5 : 1)
  })
  const channel = (k: number) =>
    planeOf(size, (i) => Math.min(1, light[i]! * (i % size.width < 60 ? wood[k]! : glue[k]!)))
  return { red: channel(0), green: channel(1), blue: channel(2) }
}

const proposed = (face: ReturnType<typeof quartered>) => {
  const { scores, limit, told } = outcomeOf(tornScores(face))
  return { told, percent: tornPercent(tornMask(scores, limit)) }
}
const beech = [0.5, 0.35, 0.2]

it.each([
  ['dark', [0.1, 0.04, 0.03]],
  ['light', [0.7, 0.68, 0.6]],
])('tells wood by its colour from a glue that is %s, and by its roughness which of them is wood', (_what, glue) => {
  const { told, percent } = proposed(quartered(beech, glue))
  expect(told).toBe('colour')
  expect(Math.abs(percent - 25)).toBeLessThan(2)
})

it('is not led astray by a shadow over half of the face', () => {
  const { told, percent } = proposed(quartered(beech, [0.6, 0.6, 0.5], 140))
  expect(told).toBe('colour')
  expect(Math.abs(percent - 25)).toBeLessThan(2)
})

/** What is proposed for a small drawn photograph. */
function proposedFor(difficulty: Difficulty, seed: number) {
  const face = drawnFace(difficulty, seed, 320, 240)
  return { face, ...proposed(outcomeOf(straightened(face, face.corners, face.proportion))) }
}

it("tells wood by its texture from glue of the wood's colour", () => {
  const { face, told, percent } = proposedFor('glue of wood colour', 3)
  expect(told).toBe('texture')
  expect(Math.abs(percent - face.tornPercent)).toBeLessThan(5)
})

it.each([
  ['glue', 1004, 0],
  ['wood', 1002, 100],
])('tells no two surfaces apart where all is %s', (_what, seed, tornPercent) => {
  const { face, told } = proposedFor('one surface alone', seed)
  expect(face.tornPercent).toBe(tornPercent)
  expect(told).toBe('neither')
})

it.each([0, 1])('tells none apart where all is dark or all a glare', (light) => {
  const plain = planeOf(size, () => light)
  expect(proposed({ red: plain, green: plain, blue: plain }).told).toBe('neither')
})

it('stops often enough for a page that must not stand still', () => {
  const steps = [...tornScores(quartered(beech, [0.1, 0.04, 0.03]))]
  expect(steps.length).toBeGreaterThan(12)
})
