import type { BlockState, Overview, OverviewFilter } from '#contract/findings/overview.ts'
import { type OverviewBlock, overviewOf } from '#domain/findings/overview/overviewOf.ts'
import type { BrokenBlock } from '#domain/programme/calendar/pullOfBreak.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { nameReader } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { newestTypedWord } from '../lists/countsOfSpecimen.ts'
import { ageAtTest } from '../lists/deriveSpecimens.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { isSimulated } from '../lists/simulated.ts'

type PullOf = (block: BrokenBlock) => number | null

/** Every block of a study, or of the archive: those that a filter lets through. `pullOf` as of `observations`. */
export function overview(database: Database, { studyId, ...filter }: OverviewFilter, pullOf: PullOf): Overview {
  return overviewOf([...madeBlocks(database, studyId, pullOf), ...plannedBlocks(database, studyId)], filter)
}

type MadeRow = {
  specimenId: number
  number: string
  /** A name that the catalogue has is NULL, and its entry beside it is not. */
  adhesive: string | null
  adhesiveId: number | null
  jointType: string | null
  jointTypeId: number | null
  exposure: string | null
  exposureId: number | null
  bondLineGapMm: number | null
  studyId: number | null
  glueUpId: number | null
  plannedAge: number | null
  /** By the two days of its result that counts, or as it was given with it. */
  ageMonths: number | null
  /** Of a block of a study: the day of its result, where it is known. */
  brokenOn: string | null
  standing: 'waiting' | 'broken' | 'lost'
  /** NULL unless its result has a curve. */
  breakId: number | null
  strengthMPa: number | null
  woodFailurePercent: number | null
  simulated: number
}

const unlessNamed = (entryId: string, written: string) => `CASE WHEN ${entryId} IS NULL THEN ${written} END`

const made = (where: string) => `
  SELECT s.specimen_id AS specimenId, r.number, ${unlessNamed('s.adhesive_id', 'r.adhesive')} AS adhesive,
    s.adhesive_id AS adhesiveId, ${unlessNamed('s.joint_type_id', 'r.joint_type')} AS jointType,
    s.joint_type_id AS jointTypeId, ${unlessNamed('s.exposure_id', 'r.exposure')} AS exposure, s.exposure_id AS exposureId,
    s.gap_mm AS bondLineGapMm, s.study_id AS studyId, s.glue_up_id AS glueUpId, s.pull_age_months AS plannedAge,
    s.age_months AS ageMonths, s.standing, s.break_in_force AS breakId,
    CASE WHEN s.study_id IS NULL OR r.glued_on IS NULL THEN NULL WHEN s.break_in_force IS NOT NULL THEN s.started_at
      ELSE (SELECT broken_on FROM typed_result WHERE typed_result_id = s.typed_result_in_force) END AS brokenOn,
    s.strength_mpa AS strengthMPa, s.wood_failure_percent AS woodFailurePercent,
    s.demo OR coalesce((SELECT ${isSimulated} FROM break_header h JOIN capture_session c ON c.session_id = h.session_id
      WHERE h.break_id = s.break_in_force), 0) AS simulated
  FROM specimen_current s
  JOIN specimen_revision r ON r.revision_id = s.revision_id
  ${where}
  ORDER BY s.specimen_id`

function madeBlocks(database: Database, studyId: number | null, pullOf: PullOf): OverviewBlock[] {
  const rows =
    studyId === null
      ? prepared<MadeRow>(database, made('')).all()
      : prepared<MadeRow>(database, made('WHERE s.study_id = ?')).all(studyId)
  const names = namesInForce(database)
  const pullAgeOf = pullAges(database, pullOf)
  const aside = setAsideResults(database)
  return rows.map((row) => {
    const out = row.standing === 'lost' ? aside.get(row.specimenId) : undefined
    const broken = out !== undefined ? { ...row, ...out } : row.standing === 'broken' ? row : null
    const { specimenId, number, bondLineGapMm } = row
    return {
      ...{ specimenId, number, bondLineGapMm, state: stateOf(row, out !== undefined) },
      adhesive: row.adhesive ?? names.get(row.adhesiveId) ?? '',
      jointType: row.jointType ?? names.get(row.jointTypeId) ?? '',
      exposure: row.exposure ?? names.get(row.exposureId) ?? '',
      ageMonths: broken === null ? row.plannedAge : (pullAgeOf(broken) ?? broken.ageMonths),
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

/** The age of the pull in which a block of a study was broken, which is its age in findings; null: in none. */
function pullAges(database: Database, pullOf: PullOf): (row: MadeRow) => number | null {
  const glueUps = prepared<{ id: number; day: string | null }>(
    database,
    `SELECT glue_up_id AS id, json_extract(fields, '$.gluedOn') AS day FROM ${glueUpsInForce}`,
  ).all()
  const gluedOnOf = new Map<number | null, string | null>(glueUps.map(({ id, day }) => [id, day]))
  // Blocks of a pull have their days in common
  const known = new Map<string, number | null>()
  return ({ studyId, glueUpId, plannedAge, brokenOn }) => {
    const gluedOn = gluedOnOf.get(glueUpId) ?? null
    if (studyId === null || gluedOn === null || brokenOn === null) return null
    const key = [studyId, gluedOn, plannedAge, brokenOn.slice(0, 10)].join(' ')
    const before = known.get(key)
    if (before !== undefined) return before
    const age = pullOf({ studyId, gluedOn, ageMonths: plannedAge, brokenOn })
    known.set(key, age)
    return age
  }
}

type AsideRow = Pick<
  MadeRow,
  'specimenId' | 'breakId' | 'strengthMPa' | 'woodFailurePercent' | 'brokenOn' | 'ageMonths'
>

const noneInForce = 's.break_in_force IS NULL AND s.typed_result_in_force IS NULL AND s.any_set_aside = 1'

/**
 * The newest break that was set aside of each specimen of which nothing counts, or its newest result without a curve where it has
 * no such break; not of another block that was in the press.
 */
function setAsideResults(database: Database): ReadonlyMap<number, AsideRow> {
  const breaks = prepared<AsideRow & { gluedOn: string | null }>(
    database,
    `SELECT s.specimen_id AS specimenId, b.break_id AS breakId, b.started_at AS brokenOn, r.glued_on AS gluedOn,
       NULL AS ageMonths, b.peak_n / s.area_mm2 AS strengthMPa, b.wood_failure_percent AS woodFailurePercent
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     JOIN break_current b ON b.specimen_id = s.specimen_id
     WHERE ${noneInForce}
       AND b.outcome = 'break' AND b.set_aside_cause IS NOT 'wrong-block' ORDER BY b.break_id`,
  ).all()
  const typed = prepared<AsideRow & { gluedOn: string | null }>(
    database,
    `SELECT s.specimen_id AS specimenId, NULL AS breakId, t.broken_on AS brokenOn, r.glued_on AS gluedOn,
       t.age_months AS ageMonths, coalesce(t.peak_n / s.area_mm2, t.strength_mpa) AS strengthMPa,
       t.wood_failure_percent AS woodFailurePercent
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     JOIN typed_result t ON t.specimen_id = s.specimen_id
     WHERE ${noneInForce} AND ${newestTypedWord('t', 'cause')} IS NOT 'wrong-block' ORDER BY t.typed_result_id`,
  ).all()
  return new Map(
    [...typed, ...breaks].map(({ gluedOn, ...row }) => [
      row.specimenId,
      { ...row, ageMonths: row.ageMonths ?? ageAtTest(gluedOn, row.brokenOn) },
    ]),
  )
}

type PlannedRow = Record<'adhesive' | 'jointType' | 'exposure', string> & {
  running: number
  bondLineGapMm: number
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
