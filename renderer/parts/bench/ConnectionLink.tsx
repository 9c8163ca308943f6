import type { BenchState } from '#contract/bench/bench.ts'
import { connectionWords } from '#words/bench/connectionWords.ts'
import { hashOf } from '../../routes/route.ts'
import { PhaseShape } from './PhaseShape.tsx'
import './connectionLink.css'

/** The state of the bench and its device, and the way to choose another. */
export function ConnectionLink({ bench: { phase, connection } }: { bench: BenchState }) {
  return (
    <a className="connection-link" href={hashOf({ page: 'connect' })} title="Choose or change the amplifier">
      <PhaseShape phase={phase} />
      <span>
        <span className="visually-hidden">Amplifier: </span>
        {connection.status === 'open' ? connection.label : connectionWords(connection)}
      </span>
    </a>
  )
}
