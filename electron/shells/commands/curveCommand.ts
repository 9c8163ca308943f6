// Held by tests/shells/commands/demoCommand.spec.ts.
import { curveComments } from '#words/breaks/curveComments.ts'
import { isSimulated, simulatedBreakWords } from '#words/keeping/demoWords.ts'
import { type Command, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

export const curveCommand: Command = {
  name: 'curve',
  operands: 'BREAK_ID',
  summary: 'Prints the raw curve of a stored break as curve CSV.',
  options: {
    comments: { type: 'boolean', help: 'says in comment lines first whose curve it is, under which scale and tare' },
  },
  usesArchive: true,
  details: [
    'Columns: time_s (seconds since the first stored sample), counts (as received; empty when the device sends a unit),',
    'force_N (after tare, under the scale of the result in force; empty when there is none).',
    'With --json: one {timeS, counts, forceN} per sample.',
  ],
  async run({ io, values, positionals, json }) {
    const [text] = positionals
    if (!/^[1-9]\d{0,14}$/.test(text!))
      throw new UsageError(`BREAK_ID must be a whole number from 1, but is "${text}".`)
    const { storedCurve } = await import('#engine/breaks/storedCurve.ts')
    const curve = await storedCurve(archiveOf(values), programName, Number(text))
    if (isSimulated(curve.record.summary)) io.err(`${simulatedBreakWords(Number(text))}\n`)
    if (json) {
      const { timeS, counts, forceN } = curve.rows
      for (const [i, time] of timeS.entries())
        if (!(await io.out(jsonLine({ timeS: time, counts: counts?.[i] ?? null, forceN: forceN?.[i] ?? null })))) break
    } else
      for (const piece of curve.csv(values.comments === true ? curveComments(curve.record) : []))
        if (!(await io.out(piece))) break
    return 0
  },
}
