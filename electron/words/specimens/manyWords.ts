import { writeCount } from '../units/numbers.ts'

const did = { move: 'moved', withdrawn: 'withdrawn', 'taken-back': 'taken back' } as const

/** What was done to many specimens at once; the others were so already. */
export function doneWords(act: keyof typeof did, changed: number, selected: number): string {
  const words = `${writeCount(changed)} ${did[act]}`
  return changed === selected ? words : `${words}, ${writeCount(selected - changed)} left as they were`
}
