import { commands } from './commands.ts'
import { processIo } from './processIo.ts'
import { runCommandLine } from './runCommandLine.ts'

const exitCode = await runCommandLine(commands, process.argv.slice(2), processIo())
// Set, not exit(): what is still on its way to a pipe must arrive.
process.exitCode = exitCode
