import { type Trouble, troubleFrom } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { BenchOccupation } from '../benchOccupation.ts'
import type { CaptureLogEntry } from '../capture/captureLog.ts'
import type { Connection, Link, LinkListener } from './link.ts'

// What happens when the cable comes out, in order: the source notices it and goes on looking for the port
// (acquisition/serial/serialSource.ts); here a capture that runs ends as it stands, marked interrupted, and a reading that a
// calibration waits for is given up; then it is told. The zero, the specimen in the press and the readings so far are kept.

/** The device went away by itself. */
export function cableOut({ state, listener }: Link, { session }: Connection, trouble: Trouble): void {
  const problem = troubleFrom(trouble)
  state.status = 'lost'
  state.problem = problem
  session.interrupted()
  listener.lost(problem)
  listener.changed()
}

/** The device is there again: the stream goes on in the same session, with the same zero. */
export function cableBack({ state, listener }: Link, { session }: Connection): void {
  state.status = 'open'
  state.problem = null
  session.resumed()
  listener.restored()
  listener.changed()
}

/** What the bench does of it: whoever has the bench to himself hears of it, and everybody else. */
export function cableReactions(bench: {
  occupation: Pick<BenchOccupation, 'lost'>
  emit: Emit
  log(entry: CaptureLogEntry): void
}): Pick<LinkListener, 'lost' | 'restored'> {
  return {
    lost(problem) {
      bench.log({ event: 'disconnected' })
      bench.occupation.lost(problem)
      bench.emit('trouble', problem)
    },
    restored: () => bench.log({ event: 'reconnected' }),
  }
}
