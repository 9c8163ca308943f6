/** A screen of the program. */
type RouteRow = {
  page: string
  /**
   * The part of the address after "#/". `{breakId}` is the number of a record, `{breakId?}` one that may be missing,
   * `{breakIds*}` several or none, with commas between them.
   */
  path: string
  /** What it is called in the navigation; only there are places for all other pages. */
  name?: string
  /** The single key that leads to it. */
  key?: string
  /** The place in the navigation that a page without a name of its own belongs to. */
  under?: string
  /** Numbers in its address may change without leading to another place. */
  staysInPlace?: true
}

/** Every screen: where it stands in the address and in the navigation, and the key that leads there. */
export const routeTable = [
  { page: 'bench', path: 'bench', name: 'Bench', key: 'B' },
  { page: 'connect', path: 'connect', under: 'bench' },
  { page: 'breakings', path: 'breaking', under: 'bench' },
  { page: 'breaking', path: 'breaking/{breakingSessionId}', under: 'bench' },
  { page: 'new-breaking', path: 'breaking/new/{studyId?}', under: 'bench' },
  { page: 'studies', path: 'studies', name: 'Studies', key: 'D' },
  { page: 'study', path: 'studies/{studyId}', under: 'studies' },
  { page: 'new-study', path: 'studies/new', under: 'studies' },
  { page: 'edit-study', path: 'studies/edit/{studyId}', under: 'studies' },
  { page: 'due', path: 'due/{studyId?}', name: 'Due', key: 'E', staysInPlace: true },
  { page: 'labels', path: 'labels/{studyId?}', under: 'due', staysInPlace: true },
  { page: 'specimens', path: 'specimens', name: 'Specimens', key: 'S' },
  { page: 'specimen', path: 'specimens/{specimenId}', under: 'specimens' },
  { page: 'new-specimen', path: 'specimens/new', under: 'specimens' },
  { page: 'import', path: 'import', under: 'specimens' },
  { page: 'readings', path: 'readings', under: 'specimens' },
  { page: 'glue-ups', path: 'glue-ups', under: 'specimens' },
  { page: 'glue-up', path: 'glue-ups/{glueUpId}', under: 'specimens' },
  { page: 'new-glue-up', path: 'glue-ups/new/{studyId?}', under: 'specimens' },
  { page: 'catalogue', path: 'catalogue', under: 'specimens' },
  { page: 'catalogue-entry', path: 'catalogue/{entryId}', under: 'specimens' },
  { page: 'breaks', path: 'breaks', name: 'Breaks', key: 'K' },
  { page: 'break', path: 'breaks/{breakId}', under: 'breaks' },
  { page: 'compare', path: 'compare/{breakIds*}', under: 'breaks', staysInPlace: true },
  { page: 'reevaluations', path: 'reevaluations', under: 'breaks' },
  { page: 'reevaluation', path: 'reevaluations/{reevaluationId}', under: 'breaks' },
  { page: 'new-reevaluation', path: 'reevaluations/new/{breakId?}', under: 'breaks' },
  { page: 'calibration', path: 'calibration', name: 'Calibration', key: 'I' },
  { page: 'calibration-record', path: 'calibration/{calibrationId}', under: 'calibration' },
  { page: 'weights', path: 'calibration/weights', under: 'calibration' },
  { page: 'calibration-run', path: 'calibration/run', under: 'calibration' },
  { page: 'check-weight', path: 'calibration/check', under: 'calibration' },
  { page: 'findings', path: 'findings/{studyId?}', name: 'Findings', key: 'F', staysInPlace: true },
  { page: 'overview', path: 'overview/{studyId?}', under: 'findings', staysInPlace: true },
  { page: 'climate', path: 'climate', under: 'findings' },
  { page: 'new-climate', path: 'climate/new', under: 'findings' },
  { page: 'archive', path: 'archive', name: 'Archive', key: 'V' },
  { page: 'settings', path: 'settings', name: 'Settings' },
  { page: 'licences', path: 'settings/licences', under: 'settings' },
] as const satisfies readonly RouteRow[]
