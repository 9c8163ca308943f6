import type { BreakingMember } from '#contract/programme/breakingProcedures.ts'
import type { SessionReport } from '#domain/programme/breaking/sessionReport.ts'
import { breakDoubtWords, repeatWords } from '#words/programme/breakingWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'

/** What is suspicious, block by block. */
export function DoubtfulBlocks({ doubtful }: Pick<SessionReport, 'doubtful'>) {
  const { strength } = useQuantities()
  return (
    <section aria-labelledby="doubtful-title">
      <h2 id="doubtful-title">To look at again</h2>
      {doubtful.length === 0 ? <p className="empty-words">Nothing.</p> : null}
      <ul className="breaking-lines">
        {doubtful.map(({ member, doubts }) => (
          <li key={member.specimen.specimenId}>
            <BlockLink member={member} />
            <span>{doubts.map((doubt) => breakDoubtWords(doubt, strength)).join('; ')}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Blocks without a result that can be relied on. */
export function RepeatedBlocks({ toRepeat }: Pick<SessionReport, 'toRepeat'>) {
  return (
    <section aria-labelledby="repeat-title">
      <h2 id="repeat-title">To repeat with another block</h2>
      {toRepeat.length === 0 ? <p className="empty-words">Nothing.</p> : null}
      <ul className="breaking-lines">
        {toRepeat.map((member) => (
          <li key={member.specimen.specimenId}>
            <BlockLink member={member} />
            <span>
              {member.specimen.breakInForce === null ? 'set aside' : 'its peak is not that of the block'},{' '}
              {repeatWords(member.spares)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Blocks that were passed over, and those whose turn did not come. */
export function UnbrokenBlocks({ skipped, waiting }: Pick<SessionReport, 'skipped' | 'waiting'>) {
  return (
    <section aria-labelledby="unbroken-title">
      <h2 id="unbroken-title">Not broken</h2>
      {skipped.length + waiting.length === 0 ? <p className="empty-words">None.</p> : null}
      <ul className="breaking-lines">
        {skipped.map((member) => (
          <li key={member.specimen.specimenId}>
            <BlockLink member={member} />
            <span>
              passed over{member.skipped === null || member.skipped.note === '' ? '' : `: ${member.skipped.note}`}
            </span>
          </li>
        ))}
        {waiting.map((member) => (
          <li key={member.specimen.specimenId}>
            <BlockLink member={member} />
            <span className="quiet">waiting</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function BlockLink({ member: { specimen } }: { member: BreakingMember }) {
  const { specimenId, breakInForce, fields } = specimen
  const breakId = breakInForce?.breakId ?? null
  return (
    <a href={hashOf(breakId === null ? { page: 'specimen', specimenId } : { page: 'break', breakId })}>
      {fields.number}
    </a>
  )
}
