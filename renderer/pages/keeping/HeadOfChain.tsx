import { headText, headUse } from '#words/keeping/headWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../host/useAnswer.ts'

/** The end of the archive's chain as it is now, to be noted outside the file; nothing while there is no entry. */
export function HeadOfChain() {
  const head = useAnswer('archive.head', {}).value
  if (head === null) return null
  return (
    <section className="archive-section" aria-labelledby="head-title">
      <h2 id="head-title">To note after a session</h2>
      <p className="prose">{headUse}</p>
      <dl className="facts archive-facts">
        <div>
          <dt>Head of the chain</dt>
          <dd className="chain-head">{headText(head)}</dd>
        </div>
        <div>
          <dt>Newest record</dt>
          <dd>{instantWords(head.instant)}</dd>
        </div>
      </dl>
    </section>
  )
}
