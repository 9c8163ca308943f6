import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { percentWords } from '../units/numbers.ts'

/**
 * One plain sentence on what an event of a curve may mean for the bond. It has percents but no figure with a unit: those stand
 * beside it. What an older method did not look for is left out.
 */
export function eventMeaning(event: CurveEvent): string {
  const { percentOfPeak, dropPercent } = event
  const atLoad = percentOfPeak === null ? '' : ` at ${percentWords(percentOfPeak)} of the peak`
  switch (event.kind) {
    case 'pop-in':
      return `One early drop${atLoad}${dropPercent === null ? '' : `, by ${percentWords(dropPercent)}`}: part of the bond or the wood beside it may have cracked there, or the block may have moved in the fixture; look at the faces for two colours of fracture.`
    case 'stick-slip':
      return `The load fell and recovered ${event.cycles === null ? 'several times' : `${event.cycles} times`}${dropPercent === null ? '' : `, by ${percentWords(dropPercent)} at most`}: the joint may have slipped in steps, as tough or soft adhesives do, or the block may have moved in the fixture.`
    case 'glitch':
      return 'A lone electrical spike, left out: it says nothing of the bond; if it comes again, check cable and earth.'
    case 'gap':
      return 'Samples are missing here: a drop or a higher load may have gone unseen.'
    case 'clipping':
      return 'The reading was at the end of its range: the load may have gone higher than the curve shows, so the peak is a lower limit.'
    case 'seating':
      return 'Slack between press, fixture and block was taken up first: that says nothing of the bond and does not touch the peak.'
    case 'plateau':
      return `The load no longer rose before the failure${percentOfPeak === null ? '' : ` and stood at ${percentWords(percentOfPeak)} of the peak`}: the adhesive may have been flowing or the wood crushing before the joint let go, unless the press was not driven on; look for crushed wood at the bearing ends.`
    case 'hold':
      return `The load was held${atLoad}${relaxedWords(dropPercent)} and then driven on: adhesives may creep under a held load, so the strength may differ from that of a joint loaded without a stop.`
    case 'reload':
      return `The load was let down${percentOfPeak === null ? '' : ` from ${percentWords(percentOfPeak)} of the peak`}${dropPercent === null ? '' : ` by ${percentWords(dropPercent)}`} and driven up again: the first loading may have harmed the joint already, so compare its strength with care.`
    case 'final-drop':
      return finalDropMeaning(event.manner)
  }
}

function finalDropMeaning(manner: CurveEvent['manner']): string {
  switch (manner) {
    case 'brittle':
      return 'The joint let go all at once: the crack may have run through bond or wood in one go, as in stiff adhesives and in wood that shears along the grain.'
    case 'progressive':
      return 'The joint let go in steps or slowly: the bond may have torn piece by piece, or tough adhesive or wood fibres may have held on for a while.'
    case null:
      return 'The joint failed here; the samples are too far apart to tell whether at once or in steps.'
  }
}

/** Less than this is not worth a word, percent. */
const leastRelaxedPercent = 0.5

const relaxedWords = (dropPercent: number | null) =>
  dropPercent === null || dropPercent < leastRelaxedPercent ? '' : `, relaxed by ${percentWords(dropPercent)}`
