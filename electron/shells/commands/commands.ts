import { calendarCommand } from './calendarCommand.ts'
import { calibrateCommand } from './calibrateCommand.ts'
import { captureCommand } from './captureCommand.ts'
import { climateCommand } from './climateCommand.ts'
import type { Command } from './command.ts'
import { curveCommand } from './curveCommand.ts'
import { demoCommand } from './demoCommand.ts'
import { emulateCommand } from './emulateCommand.ts'
import { evaluateCommand } from './evaluateCommand.ts'
import { findingsCommand } from './findingsCommand.ts'
import { importCommand } from './importCommand.ts'
import { labelsCommand } from './labelsCommand.ts'
import { planCommand } from './planCommand.ts'
import { portsCommand } from './portsCommand.ts'
import { rebuildCommand } from './rebuildCommand.ts'
import { repairCommand } from './repairCommand.ts'
import { serveCommand } from './serveCommand.ts'
import { verifyCommand } from './verifyCommand.ts'

/** Every command, in the order in which the overview lists them. */
export const commands: readonly Command[] = [
  portsCommand,
  emulateCommand,
  captureCommand,
  evaluateCommand,
  curveCommand,
  calibrateCommand,
  planCommand,
  labelsCommand,
  calendarCommand,
  findingsCommand,
  importCommand,
  climateCommand,
  verifyCommand,
  rebuildCommand,
  repairCommand,
  serveCommand,
  demoCommand,
]
