import { tornWoodWords } from '#words/findings/stripWords.ts'
import type { Key } from '../axes/keyRows.ts'
import type { At, Mark } from '../drawing/mark.ts'
import { pointMark } from '../drawing/pointShape.ts'

/** What a block's sign shows beside its place. */
export type SignedBlock = {
  /** Percent of the bonded area that failed in the wood; null: not assessed. */
  woodFailurePercent: number | null
  /** It held at least this. */
  lowerLimit: boolean
}

/** Where larger strengths lie. */
export type Onwards = 'right' | 'up'

/** A square of that side, filled as far up as wood tore; a circle where nobody looked; an arrow on where the block held more. */
export function blockSign(
  { woodFailurePercent, lowerLimit }: SignedBlock,
  at: At,
  sidePx: number,
  onwards: Onwards,
): Mark[] {
  const half = sidePx / 2
  const edge = onwards === 'right' ? { x: at.x + half, y: at.y } : { x: at.x, y: at.y - half }
  const arrow = lowerLimit ? arrowOn(edge, half, onwards) : []
  if (woodFailurePercent === null) return [...arrow, pointMark('circle', at, (1.3 * sidePx) / 12.5, true)]
  const torn = (sidePx * woodFailurePercent) / 100
  const x = at.x - half
  return [
    ...arrow,
    { kind: 'band', ink: 'hollow', x, y: at.y - half, width: sidePx, height: sidePx },
    { kind: 'band', ink: 'half', x, y: at.y + half - torn, width: sidePx, height: torn },
  ]
}

/** An arrow to where larger strengths lie, from where it begins. */
export function arrowOn(from: At, half: number, onwards: Onwards): Mark[] {
  const place = (on: number, aside: number): At =>
    onwards === 'right' ? { x: from.x + on, y: from.y + aside } : { x: from.x + aside, y: from.y - on }
  const [to, back] = [1.5 * half, 0.9 * half]
  return [
    { kind: 'rule', ink: 'spread', from, to: place(to, 0) },
    { kind: 'line', ink: 'spread', through: [place(back, -0.5 * half), place(to, 0), place(back, 0.5 * half)] },
  ]
}

/** What the signs of these blocks say of torn wood. */
export function tornWoodKeys(blocks: readonly Pick<SignedBlock, 'woodFailurePercent'>[], sidePx: number): Key[] {
  const known = blocks.some(({ woodFailurePercent }) => woodFailurePercent !== null) ? [0, 50, 100] : []
  const unknown = blocks.some(({ woodFailurePercent }) => woodFailurePercent === null) ? [null] : []
  return [...known, ...unknown].map((woodFailurePercent) => ({
    name: tornWoodWords(woodFailurePercent),
    sign: (at) => blockSign({ woodFailurePercent, lowerLimit: false }, at, sidePx, 'right'),
  }))
}
