import { type ReactNode, useMemo, useState } from 'react'
import type { Comparison } from '#contract/breaks/comparison.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { curveName, differenceWords, outlyingWords, standingWords } from '#words/breaks/compare/compareWords.ts'
import { unlikeWords } from '#words/breaks/compare/unlikeWords.ts'
import { withoutEndingZeros, writeNumber } from '#words/units/numbers.ts'
import type { Quantities, Quantity } from '#words/units/quantities.ts'
import { visibleText } from '#words/visibleText.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useKept } from '../../../parts/lists/useKept.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import type { ForceDisplay } from '../../../plots/forceDisplay.ts'
import type { OverlayCurve, OverlayMedian } from '../../../plots/overlay/overlayCurve.ts'
import { ComparedFileButtons } from './ComparedFileButtons.tsx'
import { CompareLegend } from './CompareLegend.tsx'
import { CompareTable } from './CompareTable.tsx'
import { type CompareRow, orderRows, type RowOrder, timeToPeakS } from './compareRows.ts'
import type { LoadedCurve } from './loadedCurves.ts'
import { OverlayFigure } from './OverlayFigure.tsx'

/** The curves beside their table: what is chosen or pointed at in one stands out in the other. */
export function ComparedCurves({
  comparison,
  loaded,
  withMedian,
  group,
  onTakeOut,
  children,
}: {
  comparison: Comparison
  loaded: ReadonlyMap<number, LoadedCurve>
  withMedian: boolean
  /** The group that all of them are of, which names their common adhesive; null: they are of several, or it is not known yet. */
  group: string | null
  onTakeOut(breakId: number): void
  /** What is said under the table. */
  children: ReactNode
}) {
  const quantities = useQuantities()
  const [chosen, setChosen] = useKept<number | null>('chosen of compared curves', null)
  const [pointed, setPointed] = useState<number | null>(null)
  const [order, setOrder] = useKept<{ by: RowOrder; descending: boolean }>('order of compared curves', {
    by: 'given',
    descending: false,
  })
  const rows = useMemo(
    () => orderRows(rowsOf(comparison, loaded), order.by, order.descending),
    [comparison, loaded, order],
  )
  const curves = useMemo(() => curvesOf(comparison, loaded, quantities), [comparison, loaded, quantities])
  const median = useMemo<OverlayMedian | null>(
    () => (withMedian && comparison.curves.length >= 3 ? comparison : null),
    [comparison, withMedian],
  )
  const display = useMemo(() => displayIn(quantities, comparison.unit), [quantities, comparison.unit])
  const shown = rows.find(({ breakId }) => breakId === (pointed ?? chosen)) ?? null

  function onKey(name: string): boolean {
    if (name === 'Enter' && shown !== null) {
      go({ page: 'break', breakId: shown.breakId })
      return true
    }
    if (name !== 'ArrowUp' && name !== 'ArrowDown') return false
    const at = rows.findIndex(({ breakId }) => breakId === chosen)
    const step = name === 'ArrowUp' ? -1 : 1
    const next = at < 0 ? (step > 0 ? 0 : rows.length - 1) : Math.min(Math.max(at + step, 0), rows.length - 1)
    setPointed(null)
    setChosen(rows[next]?.breakId ?? null)
    return true
  }

  return (
    <div className="compare-columns">
      <div className="compare-plot">
        <OverlayFigure
          curves={curves}
          median={median}
          display={display}
          timeUnit={comparison.timeUnit}
          emphasis={shown === null ? null : { key: shown.breakId, name: shown.name }}
          onPoint={setPointed}
          onChoose={setChosen}
          onKey={onKey}
        />
        <div className="compare-under">
          <CompareLegend
            withMedian={median !== null}
            withAside={curves.some(({ setAside }) => setAside)}
            withOutlying={curves.some(({ outlying }) => outlying !== null)}
          />
          <ComparedFileButtons {...{ comparison, loaded, curves, median, chosen, group }} />
        </div>
      </div>
      <div className="compare-side">
        <CompareTable
          rows={rows}
          withAdhesive={group === null}
          distance={distanceIn(quantities, comparison.unit)}
          wordsOf={(row) => {
            const words = outlyingWords(row.curve, comparison, quantities)
            return words === '' ? '' : `${words}. ${unlikeWords(row, rows, comparison, quantities)}`.trimEnd()
          }}
          chosen={chosen}
          pointed={pointed}
          order={order.by}
          descending={order.descending}
          onOrder={(by) => setOrder({ by, descending: by === order.by ? !order.descending : by !== 'name' })}
          onChoose={setChosen}
          onPoint={setPointed}
          onOpen={(breakId) => go({ page: 'break', breakId })}
          onTakeOut={onTakeOut}
        />
        <div className="compare-notes">{children}</div>
      </div>
    </div>
  )
}

function rowsOf({ curves }: Comparison, loaded: ReadonlyMap<number, LoadedCurve>): CompareRow[] {
  return curves.map((curve) => {
    const record = loaded.get(curve.breakId)?.record
    return {
      breakId: curve.breakId,
      name: curveName(curve, curves),
      curve,
      standing:
        record === undefined ? '' : standingWords(record.summary, resultInForce(record)?.settings.capacityN ?? null),
      adhesive: record?.summary.adhesive ?? null,
      peakN: curve.peakN,
      overruled: record?.summary.overruled ?? null,
      strengthMPa: record?.summary.strengthMPa ?? null,
      timeToPeakS: record === undefined ? null : timeToPeakS(record),
    }
  })
}

function curvesOf(
  comparison: Comparison,
  loaded: ReadonlyMap<number, LoadedCurve>,
  quantities: Quantities,
): OverlayCurve[] {
  const found: OverlayCurve[] = []
  for (const curve of comparison.curves) {
    const there = loaded.get(curve.breakId)
    if (there === undefined) continue
    const { originS, timeUnit, forceUnit, setAside, outlying } = curve
    found.push({
      key: curve.breakId,
      // Drawn on canvas, where no element makes it visible
      label: visibleText(curveName(curve, comparison.curves)),
      levels: there.levels,
      samples: there.samples,
      originS,
      timeUnit,
      forceUnit,
      setAside,
      outlying:
        outlying === null ? null : { at: outlying.at, words: differenceWords(outlying, comparison.unit, quantities) },
    })
  }
  return found
}

function displayIn(quantities: Quantities, unit: Comparison['unit']): ForceDisplay {
  const format = (shown: number) => withoutEndingZeros(writeNumber(shown, 3))
  if (unit === 'N') return { factor: quantities.force.factor, unit: quantities.force.unit, format }
  return { factor: 1, unit, format }
}

/** How a distance from the median is shown: in the unit of the force axis. */
function distanceIn({ force }: Quantities, unit: Comparison['unit']): Pick<Quantity, 'unit' | 'number'> {
  if (unit === 'N') return force
  return { unit, number: (distance) => (distance === null ? '–' : writeNumber(distance, 1)) }
}
