import * as z from 'zod'

/**
 * Kinds of records that have numbers, each with the word for all of them. Which write touches what:
 * specimen: its fields, and its breaks, for it says which of them is in force. break: everything that is recorded of it, and
 * the fields of its specimen, which stand in its summary. result: what a break counts as, that is all of it but how its
 * broken faces look and what was noted of it. face: how much of its broken faces is torn wood. curve: how a break is drawn: its samples, and the result in force with its
 * scale. routine: a guided calibration that was begun, and its readings. check: a reading of the check weight. study: its plan,
 * its blocks and its pulls. breaking: a breaking session. climate: readings of the loggers in the stores. kept-finding: a finding kept
 * under a name.
 */
const wordsOfAll = {
  specimen: 'specimens',
  break: 'breaks',
  result: 'results',
  face: 'faces',
  curve: 'curves',
  session: 'sessions',
  calibration: 'calibrations',
  routine: 'routines',
  check: 'checks',
  reevaluation: 'reevaluations',
  study: 'studies',
  'glue-up': 'glue-ups',
  breaking: 'breakings',
  'kept-finding': 'kept-findings',
} as const

/** What there is one of. */
const singles = ['weights', 'preferences', 'catalogue', 'imports', 'climate'] as const

export type RecordNoun = keyof typeof wordsOfAll
const recordNouns = Object.keys(wordsOfAll) as RecordNoun[]

/**
 * What is read or written: `specimen 17` is that one, `specimens` is any of them (written: more than can be named, or one that
 * is new to every list).
 */
export const topic = z.union([
  z.enum([...Object.values(wordsOfAll), ...singles]),
  z.templateLiteral([z.enum(recordNouns), ' ', z.int()]).refine((one) => !/ (-|0)/.test(one)),
])
export type Topic = z.infer<typeof topic>

/** Whatever is recorded. */
export const everyRecord: readonly Topic[] = [
  ...Object.values(wordsOfAll),
  'weights',
  'catalogue',
  'imports',
  'climate',
]

/** Beyond so many numbers a change speaks of all records of the kind. */
const mostNamed = 200

/** The topics of some records of one kind; of the whole kind where they are too many to be named. */
export function topicsOf(noun: RecordNoun, numbers: Iterable<number>): Topic[] {
  const distinct = [...new Set(numbers)]
  if (distinct.length > mostNamed) return [wordsOfAll[noun]]
  return distinct.map((number): Topic => `${noun} ${number}`)
}

/** All records of the kind that a topic speaks of; itself where there is only one. */
function allOf(one: Topic): Topic {
  const noun = one.split(' ')[0] as string
  return Object.hasOwn(wordsOfAll, noun) ? wordsOfAll[noun as RecordNoun] : one
}

/**
 * Whether what was read says something else after the write: it was written itself; one of all that were read was; or all of
 * its kind were.
 */
export function isTouched(read: readonly Topic[], written: readonly Topic[]): boolean {
  const exactly = new Set(written)
  const kinds = new Set(written.map(allOf))
  return read.some((one) => {
    const all = allOf(one)
    return exactly.has(one) || exactly.has(all) || (one === all && kinds.has(all))
  })
}
