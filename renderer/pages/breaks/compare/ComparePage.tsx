import { useRef, useState } from 'react'
import type { Alignment, Normalising } from '#contract/breaks/comparison.ts'
import {
  distanceWords,
  hintWords,
  leftOutName,
  medianWords,
  severalGroupsWords,
} from '#words/breaks/compare/compareWords.ts'
import { groupName } from '#words/breaks/groupName.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { Switch } from '../../../widgets/Switch.tsx'
import { ComparedCurves } from './ComparedCurves.tsx'
import { TaskLine } from './TaskLine.tsx'
import { useComparison } from './useComparison.ts'
import { useLoadedCurves } from './useLoadedCurves.ts'
import './compare.css'
import { useKept } from '../../../parts/lists/useKept.ts'

const alignments = [
  { value: 'onset', label: 'Start', title: 'time 0 is where the load starts' },
  { value: 'peak', label: 'Peak', title: 'time 0 is the highest load' },
  { value: 'break', label: 'Break', title: 'time 0 is where the joint broke' },
] as const
const normalisings = [
  { value: 'no', label: 'Force', title: 'force over time' },
  { value: 'force', label: '% of own peak', title: 'each curve in percent of its own peak' },
  { value: 'force-and-time', label: '% of peak and time', title: 'time in percent from start to peak as well' },
] as const

/** Breaks laid over each other: their curves, the median of all with its quartiles, and what stands out from it. */
export function ComparePage({ breakIds }: { breakIds: readonly number[] }) {
  if (breakIds.length === 0)
    return (
      <div className="plain-page">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'breaks' })}>Breaks</a>
          </p>
          <h1>Compare breaks</h1>
        </div>
        <p className="prose">
          Nothing is selected. Select breaks in <a href={hashOf({ page: 'breaks' })}>the list</a> with Space, or open
          one and compare it with its group.
        </p>
      </div>
    )
  return <Compare breakIds={breakIds} />
}

function Compare({ breakIds }: { breakIds: readonly number[] }) {
  const [alignAt, setAlignAt] = useKept<Alignment>('alignment of compared curves', 'onset')
  const [normalising, setNormalising] = useKept<Normalising>('scale of compared curves', 'no')
  const [withMedian, setWithMedian] = useState(true)
  const [takenOut, setTakenOut] = useState<readonly number[]>([])
  const page = useRef<HTMLDivElement>(null)
  const loaded = useLoadedCurves(breakIds)
  const made = useComparison({ breakIds: [...breakIds], alignAt, normalising })
  const group = useGroup(breakIds)
  const comparison = made.value
  const compared = comparison?.curves.length ?? 0
  return (
    <div className="compare-page" ref={page}>
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'breaks' })}>Breaks</a>
          </p>
          <h1>{breakIds.length === 1 ? 'One break' : `${breakIds.length} breaks compared`}</h1>
          {group === null ? null : <p className="record-words">{group.name ?? severalGroupsWords(compared)}</p>}
        </div>
        <div className="compare-choices">
          <Choice label="Align at" options={alignments} value={alignAt} onChange={(at) => setAlignAt(at)} />
          <Choice label="Show" options={normalisings} value={normalising} onChange={(to) => setNormalising(to)} />
          <Switch label="Median" on={withMedian && compared >= 3} onChange={setWithMedian} />
        </div>
      </header>
      {made.error?.code === 'cancelled' ? (
        <p className="compare-stopped">
          The comparison was stopped.{' '}
          <button type="button" className="button button-small" onClick={made.again}>
            Compare again
          </button>
        </p>
      ) : (
        <Notice trouble={made.error} />
      )}
      <Notice trouble={loaded.error} />
      {comparison === null ? (
        <TaskLine made={made} loaded={loaded} total={breakIds.length} />
      ) : (
        <ComparedCurves
          comparison={comparison}
          loaded={loaded.curves}
          withMedian={withMedian}
          group={group?.name ?? null}
          onTakeOut={(breakId) => {
            setTakenOut([...takenOut, breakId])
            go({ page: 'compare', breakIds: breakIds.filter((id) => id !== breakId) })
          }}
        >
          <TaskLine made={made} loaded={loaded} total={breakIds.length} />
          {compared > 0 && compared < 3 ? <p>{medianWords(compared)}</p> : null}
          {compared >= 3 ? (
            <>
              <p>{hintWords(comparison)}</p>
              <p>{distanceWords}</p>
            </>
          ) : null}
          {comparison.leftOut.length === 0 ? null : (
            <div className="compare-left-out">
              <h2>Left out</h2>
              <ul>
                {comparison.leftOut.map(({ breakId, because }) => (
                  <li key={breakId}>
                    <a href={hashOf({ page: 'break', breakId })}>
                      {leftOutName(breakId, loaded.curves.get(breakId)?.record.summary.number ?? null)}
                    </a>
                    : {because}
                  </li>
                ))}
              </ul>
            </div>
          )}
          {takenOut.length === 0 ? null : (
            <p>
              Taken out: {takenOut.length}.{' '}
              <button
                type="button"
                className="button button-small"
                onClick={() => {
                  setTakenOut([])
                  // The button goes away, so its focus goes on to the curves
                  page.current?.querySelector<HTMLElement>('.compare-table tr[tabindex="0"]')?.focus()
                  go({ page: 'compare', breakIds: [...new Set([...breakIds, ...takenOut])] })
                }}
              >
                Put back
              </button>
            </p>
          )}
        </ComparedCurves>
      )}
    </div>
  )
}

/** The name of the group, when the breaks are all of one, null for any other selection; null as a whole while it is not known. */
function useGroup(breakIds: readonly number[]): { name: string | null } | null {
  const [first] = breakIds
  const { length } = useQuantities()
  const group = useAnswer('breaks.group', first === undefined ? null : { breakId: first })
  if (group.value === null) return null
  const inGroup = new Set(group.value.breakIds)
  if (!breakIds.every((id) => inGroup.has(id))) return { name: null }
  const { common } = group.value
  const name = common === null ? `break ${first}, which belongs to no specimen` : groupName(common, length.text)
  return {
    name: breakIds.length === inGroup.size ? `all of ${name}` : `${breakIds.length} of the ${inGroup.size} of ${name}`,
  }
}
