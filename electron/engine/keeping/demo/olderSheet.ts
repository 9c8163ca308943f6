import { type ImportMapping, importMapping } from '#contract/specimens/importMapping.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { plusMonths } from '#domain/programme/calendar/plusMonths.ts'
import { type WrittenCell, writtenSheet } from '#exchange/sheets/writtenSheet.ts'
import { type DemoAdhesive, demoAdhesives } from './demoStudy.ts'

const sheetName = 'Laps'
const replicates = ['1', '2', '3', '4', '5', '6', '7', '8']

/** How the school coloured a load by the wood that tore; one that it left white tore none. */
const fills: Readonly<Record<string, number>> = { FFFF00: 25, FFC000: 50, FF0000: 75, '7F3F00': 100 }

/** How the sheet is read: a group to a row, the wood failure as the colour of each load. */
const mapping: ImportMapping = importMapping.parse({
  sheet: sheetName,
  headerRow: 2,
  layout: 'row-per-group',
  fields: {
    ...{ adhesive: { column: 'Adhesive' }, exposure: { column: 'Store' }, wood: { value: 'beech' } },
    ...{ jointType: { value: 'beech lap, long grain to end grain' }, bondLineGap: { value: 0, unit: 'mm' } },
    ...{ gluedOn: { column: 'Glued' }, brokenOn: { column: 'Broken' }, note: { column: 'Remark' } },
    ...{ load: { unit: 'lbf' }, overlapLength: { value: 1, unit: 'in' }, overlapWidth: { value: 0.75, unit: 'in' } },
    woodFailurePercent: { fillOf: 'load', fills, noFill: 0 },
  },
  replicates: { columns: replicates },
})

/** The school had made no joints with it before the study. */
const newAdhesive = 'V5'
const ages = [0, 12]
/** The sheet was begun so long before the study, months. */
const beganBeforeMonths = 30

/** 0.75 in2 at 1 MPa, lbf. */
const lbfPerMPa = (0.75 * 645.16) / 4.4482216152605
/** Glue holds less on end grain. */
const endGrainShare = 0.55

/**
 * A sheet that the school kept before it had this program: laps with end grain, overlap 1 in x 3/4 in, peaks read in lbf, wood
 * failure as the colour of the cell. All of it is invented. `startOn`: the day on which the study begins.
 */
export function olderSheet(startOn: string): { fileName: string; bytes: Buffer; mapping: ImportMapping } {
  const gluedOn = plusMonths(startOn, -beganBeforeMonths)
  const rows: WrittenCell[][] = [
    ['Saltmarsh Boatyard School: laps on end grain (invented)'],
    ['Adhesive', 'Store', 'Glued', 'Broken', ...replicates.map(Number), 'Remark'],
  ]
  for (const adhesive of demoAdhesives.filter(({ code }) => code !== newAdhesive))
    for (const ageMonths of ages) {
      const brokenOn = ageMonths === 0 ? plusDays(gluedOn, 12) : plusMonths(gluedOn, ageMonths)
      const remark = ageMonths === 0 ? '' : 'kept beside the window'
      rows.push([adhesive.name, 'loft', gluedOn, brokenOn, ...loads(adhesive, ageMonths), remark])
    }
  return { fileName: 'laps on end grain.xlsx', bytes: writtenSheet(sheetName, rows), mapping }
}

/** The loads of a group in steps of 5 lbf, coloured; one in fifteen has none, as the block had come apart before. */
function loads({ code, strengthMPa, strengthSD, woodFailurePercent }: DemoAdhesive, ageMonths: number): WrittenCell[] {
  const random = createRandom(demoAdhesives.findIndex((one) => one.code === code) * 100 + ageMonths, 104)
  return replicates.map(() => {
    const atMPa = endGrainShare * (strengthMPa + 1.4 * strengthSD * Math.max(-2, Math.min(2, random.normal())))
    const value = Math.round((atMPa * lbfPerMPa) / 5) * 5
    const wood = Math.round((0.7 * woodFailurePercent + 30 * random.normal()) / 25) * 25
    const fill = Object.keys(fills).find((one) => fills[one] === Math.min(100, wood))
    if (random.unit() < 1 / 15) return null
    return fill === undefined ? value : { value, fill }
  })
}
