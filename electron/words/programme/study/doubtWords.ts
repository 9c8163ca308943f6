import type { StudyDoubt } from '#domain/programme/study/studyDoubts.ts'
import { countOf } from '../../units/counts.ts'
import { writeCount } from '../../units/numbers.ts'

/** A doubt about a plan in one sentence, with what to do. */
export function doubtWords(doubt: StudyDoubt): string {
  switch (doubt.kind) {
    case 'nothing-left':
      return 'Every cell is left out: there is nothing to make.'
    case 'one-block-a-cell':
      return 'One block a cell shows no spread, and no difference can be told from chance: plan two or more.'
    case 'boards-short':
      return `The boards give ${countOf(doubt.give, 'block')} and ${writeCount(doubt.need)} are planned: name another board, or plan fewer.`
    case 'reference-unknown':
      return `The reference, ${doubt.name}, is none of the adhesives.`
    case 'no-start-age':
      return 'No block is broken at once: without an age of 0, nothing says how strong the bond was at the start.'
    case 'two-ages':
      return 'Two ages show a change, but not its course: three or more do.'
    case 'no-spares':
      return 'No spares for so many years: a block that is lost cannot be made again.'
    case 'left-out-unknown':
      return `${countOf(doubt.cells, 'cell')} that ${doubt.cells === 1 ? 'is' : 'are'} left out ${doubt.cells === 1 ? 'is' : 'are'} not among the levels and ages.`
  }
}
