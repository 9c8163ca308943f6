// Held by tests/renderer/routes/route.spec.ts.
import { places } from './route.ts'

/** A single key and what it does. `where` groups keys in the help. */
export type Shortcut = { key: string; does: string; where: 'anywhere' | 'bench' | 'calibration' | 'curve' | 'lists' }

/** Every shortcut of the program, as the help shows them. */
export const shortcuts: readonly Shortcut[] = [
  ...places.flatMap(({ key, name }) => (key === null ? [] : [{ key, does: name, where: 'anywhere' as const }])),
  { key: 'U', does: 'SI or US customary units', where: 'anywhere' },
  { key: 'G', does: 'Number of a block: type or scan it', where: 'anywhere' },
  { key: '?', does: 'This help', where: 'anywhere' },
  { key: 'T', does: 'Take the zero (tare)', where: 'bench' },
  { key: 'A', does: 'Recording on or off', where: 'bench' },
  { key: 'N', does: 'Next specimen', where: 'bench' },
  { key: 'P', does: 'Pass over the specimen (in a session)', where: 'bench' },
  { key: 'L', does: 'Load the virtual specimen (demo)', where: 'bench' },
  { key: '0–9', does: 'Wood failure in percent', where: 'bench' },
  { key: '↑ ↓', does: 'Wood failure in steps of 5 %', where: 'bench' },
  { key: 'F', does: 'Failure pattern', where: 'bench' },
  { key: 'O', does: 'Note', where: 'bench' },
  { key: 'Enter', does: 'Save what you see on the faces', where: 'bench' },
  { key: 'X', does: 'Set the break aside, or let it count again', where: 'bench' },
  { key: 'C', does: 'Open the curve of the last break', where: 'bench' },
  { key: 'Enter', does: 'Go on: what the screen asks for is done', where: 'calibration' },
  { key: 'R', does: 'Repeat the step that was read last', where: 'calibration' },
  { key: 'N', does: 'Leave this step out', where: 'calibration' },
  { key: 'Bksp', does: 'Back to the step before', where: 'calibration' },
  { key: 'Esc', does: 'Stop waiting for a steady reading', where: 'calibration' },
  { key: 'B', does: 'Stop early (all readings are kept)', where: 'calibration' },
  { key: 'L', does: 'Hang the weights on the virtual cell (demo)', where: 'calibration' },
  { key: 'C', does: 'Go to the curve', where: 'curve' },
  { key: '+ −', does: 'Zoom in, zoom out', where: 'curve' },
  { key: '0', does: 'Whole curve', where: 'curve' },
  { key: '← →', does: 'Move the cursor, with Shift by ten', where: 'curve' },
  { key: 'PgUp PgDn', does: 'Move along the curve', where: 'curve' },
  { key: ', .', does: 'Event before, next event', where: 'curve' },
  { key: 'P', does: 'Take this sample as the peak', where: 'curve' },
  { key: '/', does: 'Search', where: 'lists' },
  { key: '↑ ↓', does: 'Move between rows, also from the search', where: 'lists' },
  { key: 'Enter', does: 'Open the record', where: 'lists' },
  { key: 'Space', does: 'Select the row, or no longer', where: 'lists' },
  { key: 'Shift ↑ ↓', does: 'Select on the way', where: 'lists' },
  { key: 'Ctrl A', does: 'Select all found', where: 'lists' },
  { key: 'Del', does: 'Take the curve out of the comparison', where: 'lists' },
]
