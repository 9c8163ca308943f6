import type { ImportField, ImportMapping } from '#contract/specimens/importMapping.ts'

type Unit = NonNullable<NonNullable<ImportMapping['fields']['load']>['unit']>

/** What a heading says of its column: the field, the unit, and which of several blocks (`ordinal`). */
export type HeadingMeaning = { field: ImportField | null; unit: Unit | null; ordinal: number | null }

const units: readonly [unit: Unit, written: RegExp][] = [
  ['kN', /\bkn\b/],
  ['kgf', /\bkgf?\b/],
  ['lbf', /\blbf\b|\blbs?\b|\bpounds?\b/],
  ['psi', /\bpsi\b|\blbf?\/in(?:2|²)/],
  ['MPa', /\bmpa\b|\bn\/mm(?:2|²)/],
  ['mm2', /\bmm(?:2|²)|\bsq\.? ?mm\b/],
  ['in2', /\bin(?:2|²)|\bsq\.? ?in(?:ch(?:es)?)?\b/],
  ['mm', /\bmm\b/],
  ['in', /\binch(?:es)?\b|[(,[/] ?in\b| in$|["”]/],
  ['N', /\bn\b|\bnewtons?\b/],
  ['years', /\byears?\b|\byrs?\b/],
  ['months', /\bmonths?\b/],
]
const forceUnits: readonly string[] = ['N', 'kN', 'lbf', 'kgf']
const stressUnits: readonly string[] = ['MPa', 'psi']
/** What a letter before a unit of length stands for: "L (mm)". */
const sides: Readonly<Record<string, ImportField>> = { l: 'overlapLength', w: 'overlapWidth', b: 'overlapWidth' }

/** From the narrowest to the widest: the first that fits is taken. */
const fields: readonly [field: ImportField, written: RegExp][] = [
  ['woodFailurePercent', /wood ?fail|\bwf\b|torn|fib(?:re|er) ?fail|^wood ?%|^% ?wood|failure in the wood/],
  ['failurePattern', /pattern|(?:failure|fracture) ?(?:mode|type)|^mode$/],
  ['gluedOn', /glued|bonded on|glue.?up|date (?:made|of gluing)|^made/],
  ['brokenOn', /broken|tested|(?:test|break) ?(?:date|day)|date (?:broken|of (?:the )?(?:test|break))|^(?:date|day)$/],
  ['ageMonths', /\bage\b|\bmonths?\b|\byears\b/],
  ['bondLineGap', /\bgap\b|bond ?line|glue ?line/],
  ['overlapLength', /\blength\b/],
  ['overlapWidth', /\bwidth\b|\bbreadth\b/],
  ['area', /\barea\b/],
  ['strength', /strength|stress/],
  ['load', /\bloads?\b|\bforce\b|\bpeak\b|\bmax(?:imum)?\b/],
  ['exposure', /exposure|condition|treatment|environment|storage/],
  ['jointType', /\bjoint|\bgrain\b|orientation/],
  ['board', /\bboards?\b|\bplanks?\b/],
  ['lot', /\blot\b|\bbatch\b/],
  ['wood', /^wood$|species|timber/],
  ['place', /\bplace\b|shelf|location|\bbox\b/],
  ['note', /notes?\b|remarks?|comments?/],
  ['adhesive', /adhesive|\bglue\b|\bresin\b/],
  ['number', /^(?:specimen|sample|block|label)?\s?(?:no|nr|number|id|#)?\.?$/],
]
/** What stands before the number of a replicate that says nothing more of it. */
const counted = /^(?:rep(?:l(?:icate)?)?|r|block|specimen|sample|test|no|nr|#)?\.?$/

const longest = 80

/** What a heading says, as far as it can be told; people write headings in many ways, so that this is a proposal. */
export function headingMeaning(heading: string): HeadingMeaning {
  const text = heading.replaceAll(/\s+/g, ' ').trim().toLowerCase()
  const nothing = { field: null, unit: null, ordinal: null }
  if (text === '' || text.length > longest) return nothing
  const [, base = text, digits] = /^(.*?)[\s._#-]*\b#?(\d{1,3})$/.exec(text.replace(/[([].*$/, '').trim()) ?? []
  const unit = units.find(([, written]) => written.test(text))?.[0] ?? null
  const ordinal = digits === undefined ? null : Number(digits)
  if (ordinal !== null && counted.test(base.trim())) return { field: null, unit, ordinal }
  const plain = digits === undefined ? text.replace(/\s*[([,].*$/, '').trim() : base.trim()
  const side = unit === 'mm' || unit === 'in' ? sides[plain.replace(/ ?(?:mm|in)$/, '')] : undefined
  const named = side ?? fields.find(([, written]) => written.test(plain))?.[0] ?? null
  return { field: withUnit(named, unit), unit, ordinal }
}

/** A unit tells a load from a strength; a heading that is a unit alone says both. */
function withUnit(named: ImportField | null, unit: Unit | null): ImportField | null {
  if (unit === null || (named !== null && named !== 'load' && named !== 'strength')) return named
  if (stressUnits.includes(unit)) return 'strength'
  return forceUnits.includes(unit) ? 'load' : named
}
