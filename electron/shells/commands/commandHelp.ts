import type { Command, CommandOption } from './command.ts'

const common: Record<string, CommandOption> = {
  json: { type: 'boolean', help: 'one JSON object per line on stdout, and nothing else there' },
  archive: { type: 'string', value: 'FILE', help: "the archive; without it the one in the user's data folder" },
  help: { type: 'boolean', short: 'h', help: 'this text' },
}

/** Every option of a command, its own first. */
export function optionsOf(command: Command): Record<string, CommandOption> {
  const { archive, ...always } = common
  return { ...command.options, ...(command.usesArchive ? { archive: archive! } : {}), ...always }
}

/** "breakledger curve BREAK_ID [options]". */
export function usageLine(command: Command): string {
  return ['breakledger', command.name, command.operands, '[options]'].filter((word) => word !== '').join(' ')
}

/** What --help prints for one command. */
export function commandHelp(command: Command): string {
  const options = Object.entries(optionsOf(command)).map(([name, { value, help, short }]): [string, string] => [
    `${short === undefined ? '' : `-${short}, `}--${name}${value === undefined ? '' : ` ${value}`}`,
    help,
  ])
  const width = Math.max(...options.map(([written]) => written.length))
  return [
    `Usage: ${usageLine(command)}`,
    '',
    command.summary,
    ...(command.details.length > 0 ? ['', ...command.details] : []),
    '',
    'Options:',
    ...options.map(([written, help]) => `  ${written.padEnd(width)}  ${help}`),
    '',
    'Exit codes: 0 done, 1 failed or a check did not hold, 2 the command line is wrong.',
    '',
  ].join('\n')
}

/** What is printed when no command is named. */
export function overviewHelp(commands: readonly Command[]): string {
  const width = Math.max(...commands.map(({ name }) => name.length))
  return [
    'Usage: breakledger COMMAND [options]',
    '',
    'Commands:',
    ...commands.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`),
    '',
    '"breakledger COMMAND --help" says how each one is written.',
    '',
  ].join('\n')
}
