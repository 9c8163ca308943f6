import { parseArgs } from 'node:util'
import { troubleFrom } from '#contract/errors.ts'
import { visibleText } from '#words/visibleText.ts'
import { type Command, type CommandIo, type CommandValues, UsageError } from './command.ts'
import { commandHelp, optionsOf, overviewHelp, usageLine } from './commandHelp.ts'

/** Runs one command line and resolves with its exit code. What goes wrong is said on stderr; it never rejects. */
export async function runCommandLine(
  commands: readonly Command[],
  words: readonly string[],
  given: CommandIo,
): Promise<number> {
  const io = withVisibleText(given)
  const [name, ...rest] = words
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    if (name !== undefined) await io.out(overviewHelp(commands))
    else io.err(overviewHelp(commands))
    return name === undefined ? 2 : 0
  }
  const command = commands.find((one) => one.name === name)
  if (command === undefined) {
    io.err(`There is no command "${name}".\n\n${overviewHelp(commands)}`)
    return 2
  }
  try {
    const exitCode = await runCommand(command, rest, io)
    const lost = io.lost()
    if (lost !== null) throw lost
    return exitCode
  } catch (thrown) {
    if (thrown instanceof UsageError) {
      io.err(
        `${thrown.message}\nUsage: ${usageLine(command)}\n"breakledger ${command.name} --help" lists the options.\n`,
      )
      return 2
    }
    const { message, hint } = troubleFrom(thrown)
    io.err(`${message}\n${hint}\n`)
    return 1
  }
}

async function runCommand(command: Command, words: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = parse(command, words)
  if (values.help === true) {
    await io.out(commandHelp(command))
    return 0
  }
  checkOperands(command, positionals)
  return await command.run({ io, values, positionals, json: values.json === true })
}

/** Names, notes and rejected lines come from devices and other people: none of their characters may steer the terminal. */
function withVisibleText(io: CommandIo): CommandIo {
  return {
    // Asked for by the command alone: a copy made here would ask for it in the name of every command.
    get interrupt() {
      return io.interrupt
    },
    interactive: io.interactive,
    lost: () => io.lost(),
    out: (text) => io.out(visibleText(text)),
    // Our own progress begins with a carriage return, to write over the line before.
    err: (text) => io.err(text.startsWith('\r') ? `\r${visibleText(text.slice(1))}` : visibleText(text)),
  }
}

function parse(command: Command, words: readonly string[]): { values: CommandValues; positionals: string[] } {
  const options = Object.fromEntries(
    Object.entries(optionsOf(command)).map(([name, { type, short, multiple }]) => [
      name,
      { type, ...(short === undefined ? {} : { short }), ...(multiple === undefined ? {} : { multiple }) },
    ]),
  )
  try {
    return parseArgs({ args: [...words], options, strict: true, allowPositionals: true })
  } catch (thrown) {
    const text = thrown instanceof Error ? thrown.message : String(thrown)
    throw new UsageError(text.split('. ')[0]!.replace(/\.?$/, '.'))
  }
}

function checkOperands(command: Command, positionals: readonly string[]): void {
  const { operands } = command
  const [least, most] =
    operands === ''
      ? [0, 0]
      : operands.endsWith('...')
        ? [1, Number.POSITIVE_INFINITY]
        : [operands.startsWith('[') ? 0 : 1, 1]
  if (positionals.length < least) throw new UsageError(`"${command.name}" needs ${operands}.`)
  if (positionals.length > most)
    throw new UsageError(
      `"${command.name}" takes ${most === 0 ? 'no operand' : 'one operand'}, not "${positionals.join(' ')}".`,
    )
}
