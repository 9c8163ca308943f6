import { calibrateDemo } from './calibration/demoCalibration.ts'
import type { DemoMakers } from './keeping/demo/fillDemo.ts'
import { readImportTable, runImport } from './specimens/importTable.ts'

/** What the demo is made with, of other subjects than that of the archive. */
export const demoMakers: DemoMakers = {
  calibrate: calibrateDemo,
  async importSheet(archive, { fileName, bytes, mapping }, said, signal) {
    await runImport(archive, await readImportTable(fileName, bytes, mapping, signal), said, () => {}, signal)
  },
}
