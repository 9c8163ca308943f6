import type { LabelChoice, LabelledBlock } from '#contract/programme/labelProcedures.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'

type FoundBlock = {
  running: number
  adhesive: string
  jointType: string
  gapMm: number | null
  exposure: string
  ageMonths: number | null
}

const blockColumns = 'running, adhesive, joint_type AS jointType, gap_mm AS gapMm, exposure, age_months AS ageMonths'
const ofSpecimen = `r.adhesive, r.joint_type AS jointType, r.bond_line_gap_mm AS gapMm, r.exposure`

/** What stands on the labels of a choice, in the order of the numbers, or of the specimens as they are named. */
export function labelledBlocks(database: Database, choice: LabelChoice): LabelledBlock[] {
  switch (choice.kind) {
    case 'study':
      return ofStudy(database, choice.studyId)
    case 'numbers':
      return ofNumbers(database, choice.first, choice.last)
    case 'specimens':
      return ofSpecimens(database, choice.specimenIds)
  }
}

function ofStudy(database: Database, studyId: number): LabelledBlock[] {
  const found = prepared<FoundBlock>(database, `SELECT ${blockColumns} FROM block WHERE study_id = ? ORDER BY running`)
  const blocks = found.all(studyId)
  const isThere = prepared(database, 'SELECT 1 FROM study_revision WHERE study_id = ?')
  if (blocks.length === 0 && isThere.get(studyId) === undefined) throw notFound('study', studyId)
  return blocks.map(labelled)
}

/** All numbers of the range that make a label, those of no block too: labels may be printed before anybody knows for what. */
function ofNumbers(database: Database, first: number, last: number): LabelledBlock[] {
  const known = prepared<FoundBlock>(
    database,
    `SELECT ${blockColumns} FROM block WHERE running BETWEEN @first AND @last
     UNION ALL
     SELECT l.running, ${ofSpecimen}, NULL FROM label l
     JOIN specimen_current s ON s.specimen_id = l.specimen_id JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE l.running BETWEEN @first AND @last`,
  ).all({ first, last })
  const byRunning = new Map(known.map((block) => [block.running, block]))
  const labels: LabelledBlock[] = []
  for (let running = first; running <= last; running++) {
    const number = labelOf(running)
    const block = byRunning.get(running)
    if (number !== null) labels.push(block === undefined ? { number, group: null } : labelled(block))
  }
  return labels
}

function ofSpecimens(database: Database, specimenIds: readonly number[]): LabelledBlock[] {
  const read = prepared<Omit<FoundBlock, 'running'> & { number: string }>(
    database,
    `SELECT r.number, ${ofSpecimen}, p.age_months AS ageMonths
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     LEFT JOIN glued_block g ON g.specimen_id = s.specimen_id LEFT JOIN block p ON p.block_id = g.block_id
     WHERE s.specimen_id = ?`,
  )
  return specimenIds.map((specimenId) => {
    const found = read.get(specimenId)
    if (found === undefined) throw notFound('specimen', specimenId)
    const { number, ...group } = found
    return { number, group }
  })
}

function labelled({ running, ...group }: FoundBlock): LabelledBlock {
  return { number: labelOf(running)!, group }
}
