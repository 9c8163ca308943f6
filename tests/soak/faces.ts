import { quantileOfSorted } from '#domain/numbers/quantile.ts'
import { straightened } from '#domain/strength/face/facePixels.ts'
import { tornMask, tornPercent } from '#domain/strength/face/tornMask.ts'
import { type SurfacesTold, tornScores } from '#domain/strength/face/tornScores.ts'
import { type Difficulty, type DrawnFace, difficulties, drawnFace } from '#tests/reference/faces/drawnFace.ts'
import { outcomeOf } from '#tests/reference/faces/outcomeOf.ts'

/** The proposal for one drawn face, beside its truth; null where the program proposes nothing. */
export type ReadFace = {
  difficulty: Difficulty
  seed: number
  truePercent: number
  proposedPercent: number | null
  told: SurfacesTold
  tookMs: number
}

/** What the program proposes for a drawn face. */
export function readFace(face: DrawnFace): Pick<ReadFace, 'proposedPercent' | 'told'> {
  const { scores, limit, told } = outcomeOf(tornScores(outcomeOf(straightened(face, face.corners, face.proportion))))
  return { proposedPercent: told === 'neither' ? null : tornPercent(tornMask(scores, limit)), told }
}

/** Draws so many faces, every kind of difficulty in turn, and reads each. */
export function readFaces(count: number, firstSeed: number, width = 640, height = 480): ReadFace[] {
  return Array.from({ length: count }, (_, i) => {
    const difficulty = difficulties[i % difficulties.length]!
    const seed = firstSeed + Math.floor(i / difficulties.length)
    const face = drawnFace(difficulty, seed, width, height)
    const began = performance.now()
    const read = readFace(face)
    return { difficulty, seed, truePercent: face.tornPercent, ...read, tookMs: performance.now() - began }
  })
}

/** How far proposals lie from the truth, in points of wood failure; a face without a proposal counts in `faces` alone. */
export function errorsOf(faces: readonly ReadFace[]) {
  const errors = faces
    .flatMap(({ proposedPercent, truePercent }) =>
      proposedPercent === null ? [] : [Math.abs(proposedPercent - truePercent)],
    )
    .sort((a, b) => a - b)
  const at = (share: number) => (errors.length === 0 ? null : quantileOfSorted(errors, share))
  return {
    faces: faces.length,
    proposed: errors.length,
    median: at(0.5),
    ninetieth: at(0.9),
    worst: at(1),
    within5: errors.filter((error) => error <= 5).length,
  }
}

function line(name: string, faces: readonly ReadFace[]): string {
  const { faces: n, proposed, median, ninetieth, worst, within5 } = errorsOf(faces)
  const figures = [median, ninetieth, worst].map((error) => (error?.toFixed(1) ?? '-').padStart(7)).join('')
  return `${name.padEnd(22)}${String(n).padStart(6)}${String(proposed).padStart(10)}${figures}${`${within5} of ${proposed}`.padStart(12)}`
}

/** [COUNT]: how many faces to draw, 132 unless told, at least 60. Holds while the median error is at most 5 points. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const count = Math.max(60, Number(words[0] ?? 132))
  const faces = readFaces(count, 1)
  console.log('Error of the proposed wood failure on drawn faces, points')
  console.log(`${'difficulty'.padEnd(22)} faces  proposed median    90%  worst    within 5`)
  for (const difficulty of difficulties)
    console.log(
      line(
        difficulty,
        faces.filter((face) => face.difficulty === difficulty),
      ),
    )
  console.log(line('all', faces))
  for (const told of ['colour', 'texture', 'neither'] as const)
    console.log(`surfaces told apart by ${told}: ${faces.filter((face) => face.told === told).length}`)
  const took = faces.map((face) => face.tookMs).sort((a, b) => a - b)
  console.log(`milliseconds a face: median ${quantileOfSorted(took, 0.5).toFixed(0)}, most ${took.at(-1)!.toFixed(0)}`)
  return errorsOf(faces).median! <= 5
}
