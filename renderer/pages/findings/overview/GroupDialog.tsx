import type { OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import { overviewBlockWords, overviewGroupName } from '#words/findings/overviewWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { CancelButton } from '../../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../../widgets/dialogs/Dialog.tsx'

/** The blocks of a group, each with the way to its specimen and its curve. */
export function GroupDialog({ group, onClose }: { group: OverviewGroup; onClose(): void }) {
  const quantities = useQuantities()
  return (
    <Dialog title={overviewGroupName(group, quantities)} onClose={onClose} width="wide">
      <ul className="overview-blocks">
        {group.blocks.map((block) => {
          const { number, specimenId, breakId } = block
          return (
            <li key={`${number} ${specimenId}`}>
              {specimenId === null ? (
                <span>{number}</span>
              ) : (
                <a href={hashOf({ page: 'specimen', specimenId })}>{number}</a>
              )}
              <span>{overviewBlockWords(block, quantities.strength)}</span>
              {breakId === null ? null : <a href={hashOf({ page: 'break', breakId })}>curve</a>}
            </li>
          )
        })}
      </ul>
      <div className="dialog-buttons">
        <CancelButton>Close</CancelButton>
      </div>
    </Dialog>
  )
}
