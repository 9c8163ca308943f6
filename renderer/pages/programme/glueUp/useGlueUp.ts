// Held by tests/browser/programme/sessionRun.spec.ts.
import { useMemo, useState } from 'react'
import type { InputOf } from '#contract/procedures.ts'
import type { GlueUpDraft } from '#contract/programme/glueUpDraft.ts'
import type { GlueUpPlan } from '#contract/programme/glueUpProcedures.ts'
import { agesToGlue, chosenBlocks } from '#domain/programme/glueUp/chosenBlocks.ts'
import type { MeasuredSize } from '#domain/programme/glueUp/sizeDoubts.ts'
import { groupOfBlockWords } from '#words/programme/breakingWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { today } from '../../../parts/forms/today.ts'
import {
  changedTexts,
  readableTexts,
  shownTexts,
  type TypedTexts,
  type UnitFields,
} from '../../../parts/forms/typedTexts.ts'
import { type TypedForm, untouched } from '../../../parts/forms/useTypedTexts.ts'
import type { CaliperBlock } from './CaliperRow.tsx'
import { areaOf, type CaliperCells, isUnread, sizeIn } from './caliperCells.ts'
import { emptyGlueUp, type GlueUpErrors, glueUpUnits, readGlueUp } from './glueUpForm.ts'
import { emptyOwnBlocks, type OwnBlockErrors, ownBlockUnits, ownRows, readOwnBlocks } from './ownBlocks.ts'

type Asked = Omit<InputOf<'glueUps.add'>, 'studyId' | 'by'>

/** All that is typed and chosen of a glue-up; `plan` null: of blocks of no study. */
export function useGlueUp(plan: GlueUpPlan | null, draft: GlueUpDraft | null) {
  const quantities = useQuantities()
  const blocks = plan?.blocks ?? noBlocks
  const [series, setSeries] = useState<ReadonlyMap<string, string>>(new Map(draft?.series))
  const [ages, setAges] = useState<ReadonlySet<number | null>>(new Set(draft?.ages ?? agesToGlue(blocks)))
  const [own, setOwn] = useState(draft?.own ?? untouched(emptyOwnBlocks))
  const [texts, setTexts] = useState(draft?.texts ?? untouched(emptyGlueUp(today())))
  const [cells, setCells] = useState<CaliperCells>(draft?.cells ?? {})
  const [asPlanned, setAsPlanned] = useState(false)
  const [errors, setErrors] = useState<{ texts: GlueUpErrors; own: OwnBlockErrors }>({ texts: {}, own: {} })
  const kept = useMemo(
    () => ({ series: [...series], ages: [...ages], own, texts, cells }),
    [series, ages, own, texts, cells],
  )
  const chosen = useMemo(
    () => chosenBlocks(blocks, { series: new Map([...series].map(([key, count]) => [key, countOf(count)])), ages }),
    [blocks, series, ages],
  )
  const ownForm = formOf(own, ownBlockUnits, quantities, setOwn)
  const textForm = formOf(texts, glueUpUnits, quantities, setTexts)
  const rows: CaliperBlock[] =
    plan === null
      ? ownRows(ownForm.shown)
      : chosen.map((block) => ({
          ...{ key: `block${block.blockId}`, number: block.number },
          words: groupOfBlockWords(block, quantities.length),
        }))
  const planned: MeasuredSize = { lengthMm: plan?.overlapLengthMm ?? null, widthMm: plan?.overlapWidthMm ?? null }
  const named = plan === null ? [{ adhesive: ownForm.shown.adhesive.trim(), exposure: ownForm.shown.exposure }] : chosen
  const adhesives = [...new Set(named.map(({ adhesive }) => adhesive))].filter((one) => one !== '')
  const exposures = [...new Set(named.map(({ exposure }) => exposure))]

  /** What is to be stored; null: something cannot be, and is marked. */
  function read(): Asked | null {
    const glued = readGlueUp(textForm.readable, adhesives, quantities)
    const common = plan === null ? readOwnBlocks(ownForm.readable, quantities) : null
    setErrors({ texts: glued.errors ?? {}, own: common?.errors ?? {} })
    if (glued.fields === null || (common !== null && common.errors !== null) || rows.length === 0) return null
    if (rows.some(({ key }) => isUnread(cells, key))) return null
    const sized = (key: string, exposure: string) => ({
      ...measuredOrPlanned(sizeIn(cells, key), asPlanned ? planned : null),
      place: texts.texts.places[exposure] ?? '',
    })
    return {
      fields: glued.fields,
      blocks:
        common === null
          ? chosen.map(({ blockId, exposure }) => ({ blockId, ...sized(`block${blockId}`, exposure) }))
          : rows.map(({ key, number }) => ({ number, ...common.common, ...sized(key, common.common.exposure) })),
    }
  }

  return {
    ...{ series, setSeries, ages, setAges, cells, setCells, asPlanned, setAsPlanned, errors, kept, rows, planned },
    ...{ adhesives, exposures, own: ownForm, texts: textForm, read },
  }
}

const noBlocks: GlueUpPlan['blocks'] = []

/** '' and what is no count: all of them. */
function countOf(typed: string): number | null {
  return /^\d+$/.test(typed.trim()) ? Number(typed) : null
}

function measuredOrPlanned(size: MeasuredSize, planned: MeasuredSize | null) {
  const isMeasured = size.lengthMm !== null || size.widthMm !== null
  const { lengthMm, widthMm } = isMeasured || planned === null ? size : planned
  return {
    ...{ overlapLengthMm: lengthMm, overlapWidthMm: widthMm, areaMm2: areaOf({ lengthMm, widthMm }) },
    asPlanned: !isMeasured && planned !== null,
  }
}

function formOf<Texts extends object>(
  typed: TypedTexts<Texts>,
  units: UnitFields<keyof Texts>,
  now: Quantities,
  setTyped: (typed: TypedTexts<Texts>) => void,
): TypedForm<Texts> {
  const shown = shownTexts(typed, units, now)
  return {
    shown,
    readable: readableTexts(typed, units, now),
    onTexts: (next) => setTyped(changedTexts(typed, shown, next, now)),
  }
}
