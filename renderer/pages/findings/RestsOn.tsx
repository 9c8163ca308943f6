import { findingText } from '#words/findings/findingText.ts'
import { noteText } from '#words/findings/noteWords.ts'
import { capitalised } from '#words/sentence.ts'
import { countOf } from '#words/units/counts.ts'
import type { FindingsView } from './view.ts'

/** What the answer rests on: what was assumed and looked at, what is missing, and which data it was made from. */
export function RestsOn({
  found,
  ageMonths,
  name,
}: Omit<FindingsView, 'ageMonths'> & { ageMonths: FindingsView['ageMonths'] | 'all' }) {
  const named = <Line extends object>(line: Line): Line => {
    const groups = ['group', 'a', 'b', 'reference'] as const
    const changed = groups.flatMap((key) => {
      const value = (line as Record<string, unknown>)[key]
      return typeof value === 'string' ? [[key, name(value)] as const] : []
    })
    return { ...line, ...Object.fromEntries(changed) }
  }
  const here = found.lines.filter(
    (line) => ageMonths === 'all' || !('ageMonths' in line) || line.ageMonths === ageMonths || line.ageMonths === null,
  )
  const notes = here.flatMap((line) => (line.kind === 'note' ? [capitalised(noteText(named(line)))] : []))
  const looked = here
    .filter(({ kind }) => kind === 'spread-test' || kind === 'means-test')
    .map((line) => capitalised(findingText(named(line))))
  return (
    <section className="findings-rests" aria-label="What this rests on">
      <h2>What this rests on</h2>
      <p className="prose">
        Blocks within a group are taken for independent and, but for the ranks and the tests of order, for normally
        spread. Results compare adhesives on this bench; they are no design values.
      </p>
      <ul>
        {[...new Set([...notes, ...looked])].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p className="quiet">
        {countOf(found.blocks.length, 'result')}, data {found.dataSha256.slice(0, 16)}
      </p>
    </section>
  )
}
