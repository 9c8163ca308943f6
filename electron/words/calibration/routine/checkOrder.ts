import type { CheckState } from '#contract/calibration/checkWeight.ts'
import { stackWords } from '../weightWords.ts'
import { waitingWords } from './waitingWords.ts'

/** What a check asks of the person now. */
export function checkOrder({ phase, weights, live }: Pick<CheckState, 'phase' | 'weights' | 'live'>): {
  title: string
  advice: string
} {
  if (phase === 'zero') return { title: 'Take everything off', advice: 'Then read the zero.' }
  if (phase === 'load') return { title: `Hang ${stackWords(weights)}`, advice: 'Let it hang still, then read it.' }
  if (phase === 'averaging') return { title: 'Hands off', advice: 'Steady. Averaging now.' }
  if (phase === 'waiting-for-steady')
    return {
      title: 'Hands off',
      advice: waitingWords(live),
    }
  return { title: 'Done', advice: 'The check is stored.' }
}
