import type { BlockState, Overview, OverviewFilter } from '#contract/findings/overview.ts'
import { type OverviewBlock, overviewOf } from '#domain/findings/overview/overviewOf.ts'
import { ageMonths } from '#domain/programme/ageMonths.ts'
import type { BrokenBlock } from '#domain/programme/calendar/pullOfBreak.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { nameReader } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { isSimulated } from '../lists/simulated.ts'

type PullOf = (block: BrokenBlock) => number | null

/** Every block of a study, or of the archive: those that a filter lets through. `pullOf` as of `observations`. */
export function overview(database: Database, { studyId, ...filter }: OverviewFilter, pullOf: PullOf): Overview {
  return overviewOf([...madeBlocks(database, studyId, pullOf), ...plannedBlocks(database, studyId)], filter)
}

type MadeRow = {
  specimenId: number
  number: string
  adhesive: string
  adhesiveId: number | null
  jointType: string
  jointTypeId: number | null
  exposure: string
  exposureId: number | null
  bondLineGapMm: number | null
  gluedOn: string | null
  studyId: number | null
  glueUpId: number | null
  plannedAge: number | null
  standing: 'waiting' | 'broken' | 'lost'
  /** NULL unless its result has a curve. */
  breakId: number | null
  startedAt: string | null
  typedAge: number | null
  /** A result without a curve may come without its day. */
  dayKnown: number
  strengthMPa: number | null
  woodFailurePercent: number | null
  simulated: number
}

const made = (where: string) => `
  SELECT s.specimen_id AS specimenId, r.number, r.adhesive, s.adhesive_id AS adhesiveId, r.joint_type AS jointType,
    s.joint_type_id AS jointTypeId, r.exposure, s.exposure_id AS exposureId, s.gap_mm AS bondLineGapMm, r.glued_on AS gluedOn,
    s.study_id AS studyId, s.glue_up_id AS glueUpId, s.pull_age_months AS plannedAge, s.standing, s.break_in_force AS breakId,
    s.started_at AS startedAt, t.age_months AS typedAge, t.typed_result_id IS NULL OR t.broken_on IS NOT NULL AS dayKnown,
    s.strength_mpa AS strengthMPa, s.wood_failure_percent AS woodFailurePercent,
    s.demo OR coalesce((SELECT ${isSimulated} FROM break_header h JOIN capture_session c ON c.session_id = h.session_id
      WHERE h.break_id = s.break_in_force), 0) AS simulated
  FROM specimen_current s
  JOIN specimen_revision r ON r.revision_id = s.revision_id
  LEFT JOIN typed_result t ON t.typed_result_id = s.typed_result_in_force
  ${where}
  ORDER BY s.specimen_id`

function madeBlocks(database: Database, studyId: number | null, pullOf: PullOf): OverviewBlock[] {
  const rows =
    studyId === null
      ? prepared<MadeRow>(database, made('')).all()
      : prepared<MadeRow>(database, made('WHERE s.study_id = ?')).all(studyId)
  const names = namesInForce(database)
  const ageOf = agesReader(database, pullOf)
  const aside = setAsideBreaks(database)
  return rows.map((row) => {
    const out = row.standing === 'lost' ? aside.get(row.specimenId) : undefined
    const broken = out !== undefined ? { ...row, ...out } : row.standing === 'broken' ? row : null
    const { specimenId, number, bondLineGapMm } = row
    return {
      ...{ specimenId, number, bondLineGapMm, state: stateOf(row, out !== undefined) },
      adhesive: names.get(row.adhesiveId) ?? row.adhesive,
      jointType: names.get(row.jointTypeId) ?? row.jointType,
      exposure: names.get(row.exposureId) ?? row.exposure,
      ageMonths: broken === null ? row.plannedAge : ageOf(broken),
      breakId: broken?.breakId ?? null,
      strengthMPa: broken?.strengthMPa ?? null,
      woodFailurePercent: broken?.woodFailurePercent ?? null,
      simulated: row.simulated === 1,
    }
  })
}

function stateOf({ standing, breakId }: Pick<MadeRow, 'standing' | 'breakId'>, setAside: boolean): BlockState {
  if (setAside) return 'excluded'
  if (standing !== 'broken') return standing
  return breakId === null ? 'peak-only' : 'curve'
}

/** The entries that were merged into no other, by their numbers: those that derived rows name. */
function namesInForce(database: Database): ReadonlyMap<number | null, string> {
  const rows = prepared<{ id: number; name: string }>(
    database,
    'SELECT entry_id AS id, name FROM catalogue_current WHERE entry_id = into_entry_id',
  ).all()
  return new Map(rows.map(({ id, name }) => [id, name]))
}

/** The age of a broken block as findings count it: that of its pull, else as it was given, else by its two days; null: not known. */
function agesReader(database: Database, pullOf: PullOf): (row: MadeRow) => number | null {
  const glueUps = prepared<{ id: number; day: string | null }>(
    database,
    "SELECT glue_up_id AS id, json_extract(fields, '$.gluedOn') AS day FROM glue_up",
  ).all()
  const gluedOnOf = new Map<number | null, string | null>(glueUps.map(({ id, day }) => [id, day]))
  // Blocks of a pull have their days in common
  const known = new Map<string, number | null>()
  return ({ studyId, glueUpId, plannedAge, gluedOn, startedAt, typedAge, dayKnown }) => {
    const brokenOn = startedAt?.slice(0, 10) ?? null
    const gluedInStudyOn = gluedOnOf.get(glueUpId) ?? null
    const key = [studyId, gluedInStudyOn, plannedAge, gluedOn, brokenOn, typedAge, dayKnown].join(' ')
    const before = known.get(key)
    if (before !== undefined) return before
    const byDays = dayKnown === 1 && gluedOn !== null && brokenOn !== null
    const ofPull =
      studyId !== null && gluedInStudyOn !== null && byDays
        ? pullOf({ studyId, gluedOn: gluedInStudyOn, ageMonths: plannedAge, brokenOn })
        : null
    const age = ofPull ?? typedAge ?? (byDays ? ageMonths(gluedOn, brokenOn) : null)
    known.set(key, age)
    return age
  }
}

type AsideRow = Pick<
  MadeRow,
  'specimenId' | 'breakId' | 'startedAt' | 'typedAge' | 'dayKnown' | 'strengthMPa' | 'woodFailurePercent'
>

/** The newest break that was set aside of each specimen of which nothing counts; not of another block that was in the press. */
function setAsideBreaks(database: Database): ReadonlyMap<number, AsideRow> {
  const rows = prepared<AsideRow>(
    database,
    `SELECT s.specimen_id AS specimenId, b.break_id AS breakId, b.started_at AS startedAt, NULL AS typedAge, 1 AS dayKnown,
       b.peak_n / s.area_mm2 AS strengthMPa, b.wood_failure_percent AS woodFailurePercent
     FROM specimen_current s JOIN break_current b ON b.specimen_id = s.specimen_id
     WHERE s.break_in_force IS NULL AND s.typed_result_in_force IS NULL AND s.any_set_aside = 1
       AND b.outcome = 'break' AND b.set_aside_cause IS NOT 'wrong-block' ORDER BY b.break_id`,
  ).all()
  return new Map(rows.map((row) => [row.specimenId, row]))
}

type PlannedRow = Pick<MadeRow, 'adhesive' | 'jointType' | 'exposure' | 'bondLineGapMm'> & {
  running: number
  ageMonths: number | null
}

const planned = (where: string) => `
  SELECT running, adhesive, joint_type AS jointType, exposure, gap_mm AS bondLineGapMm, age_months AS ageMonths FROM block
  WHERE NOT EXISTS (SELECT 1 FROM glued_block g WHERE g.block_id = block.block_id) ${where} ORDER BY running`

/** Blocks that are allocated and not glued, under the names that the catalogue has for theirs. */
function plannedBlocks(database: Database, studyId: number | null): OverviewBlock[] {
  const rows =
    studyId === null
      ? prepared<PlannedRow>(database, planned('')).all()
      : prepared<PlannedRow>(database, planned('AND study_id = ?')).all(studyId)
  const read = nameReader(database)
  const named = (kind: 'adhesive' | 'joint-type' | 'exposure', name: string) =>
    read({ kind, name, of: '' })?.name ?? name
  return rows.map(({ running, adhesive, jointType, exposure, bondLineGapMm, ageMonths: plannedAge }) => ({
    number: labelOf(running) ?? String(running),
    adhesive: named('adhesive', adhesive),
    jointType: named('joint-type', jointType),
    exposure: named('exposure', exposure),
    ...{ bondLineGapMm, ageMonths: plannedAge, specimenId: null, breakId: null, state: 'planned' as const },
    ...{ strengthMPa: null, woodFailurePercent: null, simulated: false },
  }))
}
