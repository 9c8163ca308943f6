import type { RoutinePosition, RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { heaviestPosition, positionAtHand, weightsBefore } from '#domain/calibration/routinePlace.ts'
import { directionWords } from '../readingWords.ts'
import { stackWords } from '../weightWords.ts'
import { waitingWords } from './waitingWords.ts'

/** What the screen asks of the person: a short order, what to mind, and what Enter then means. */
export type Order = { title: string; loadN: number | null; advice: string; goOn: string }

/** The order of a phase. */
export function orderOf(state: RoutineState): Order {
  const { phase, plan, preloadsDone, live } = state
  const at = positionAtHand(state)
  if (phase === 'preloading') {
    const heaviest = heaviestPosition(state)
    return {
      title: `Preload ${preloadsDone + 1} of ${plan?.preloads ?? 1}: hang ${stackWords(heaviest?.weights ?? [])}`,
      loadN: heaviest?.forceN ?? null,
      advice: 'Leave it on for some seconds, take it all off again, then go on. It settles cell and frame.',
      goOn: 'This preload is done',
    }
  }
  if (phase === 'waiting-for-steady')
    return {
      title: 'Hands off',
      loadN: at?.forceN ?? null,
      advice: waitingWords(live),
      goOn: 'Waiting …',
    }
  if (phase === 'averaging')
    return { title: 'Hands off', loadN: at?.forceN ?? null, advice: 'Steady. Averaging now.', goOn: 'Averaging …' }
  if (phase === 'holding')
    return {
      title: 'Leave the load on, hands off',
      loadN: at?.forceN ?? null,
      advice: `The step is read. The load stays on for ${plan?.creepHoldS ?? 0} s to see how the reading creeps.`,
      goOn: 'Holding …',
    }
  if (at === null || at.weights.length === 0)
    return {
      title: 'Take all weights off',
      loadN: 0,
      advice: 'Leave on only what always hangs there: hook, tray, chain. Then go on.',
      goOn: 'Read the zero',
    }
  return {
    title: `Hang ${stackWords(at.weights)}`,
    loadN: at.forceN,
    advice: changeWords(weightsBefore(state), at.weights, at.direction),
    goOn: 'Read this step',
  }
}

/** How to come from one stack to the next, in words. */
export function changeWords(
  before: readonly string[],
  after: readonly string[],
  direction: RoutinePosition['direction'],
): string {
  const added = after.filter((name) => !before.includes(name))
  const removed = before.filter((name) => !after.includes(name))
  const order =
    added.length > 0 && removed.length > 0
      ? `Put on ${stackWords(added)} and take off ${stackWords(removed)}`
      : added.length > 0
        ? `Put on ${stackWords(added)}`
        : removed.length > 0
          ? `Take off ${stackWords(removed)}`
          : 'Leave it as it hangs'
  return `${order}, ${direction === 'up' ? 'gently and never beyond the load' : 'gently and never below the load'}. Then go on.`
}

/** Where the routine stands: "Run 2 of 3, going up, step 4 of 7". */
export function placeWords(state: Pick<RoutineState, 'current' | 'positions' | 'plan' | 'phase'>): string {
  const at = positionAtHand(state)
  if (state.phase === 'preloading') return 'Before the first run'
  if (at === null || state.current === null) return ''
  const ofRun = state.positions.filter((position) => position.run === at.run)
  const first = state.positions.findIndex((position) => position.run === at.run)
  return `Run ${at.run} of ${state.plan?.runs ?? at.run}, ${directionWords[at.direction]}, reading ${state.current - first + 1} of ${ofRun.length}`
}

/** How much of the routine is done, in readings. */
export function progressWords(state: Pick<RoutineState, 'positions'>): string {
  const done = state.positions.filter((position) => position.standing !== 'ahead').length
  return `${done} of ${state.positions.length} readings done`
}
