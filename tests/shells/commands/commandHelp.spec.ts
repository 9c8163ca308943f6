import { describe, expect, it } from 'vitest'
import type { Command } from '#shells/commands/command.ts'
import { commandHelp, optionsOf, overviewHelp, usageLine } from '#shells/commands/commandHelp.ts'
import { commands } from '#shells/commands/commands.ts'

const command: Command = {
  name: 'weigh',
  operands: 'FILE...',
  summary: 'Weighs files',
  options: { scale: { type: 'string', value: 'N', help: 'newtons per count' } },
  usesArchive: false,
  details: ['More on weighing.'],
  run: async () => 0,
}

describe('the help of a command', () => {
  it('says how it is written, with operands where it takes any', () => {
    expect(usageLine(command)).toBe('breakledger weigh FILE... [options]')
    expect(usageLine({ ...command, operands: '' })).toBe('breakledger weigh [options]')
  })
  it('lists its own options first, then those of all, the archive only where it is used', () => {
    expect(Object.keys(optionsOf(command))).toEqual(['scale', 'json', 'help'])
    expect(Object.keys(optionsOf({ ...command, usesArchive: true }))).toEqual(['scale', 'archive', 'json', 'help'])
  })
  it('puts the explanations below each other', () => {
    const lines = commandHelp(command).split('\n')
    expect(lines).toContain('More on weighing.')
    expect(lines).toContain('  --scale N   newtons per count')
    expect(lines).toContain('  -h, --help  this text')
  })
  it('is named for every command there is where none is named', () => {
    const lines = overviewHelp(commands).split('\n')
    for (const { name, summary } of commands)
      expect(lines.filter((line) => line.startsWith(`  ${name} `) && line.endsWith(`  ${summary}`))).toHaveLength(1)
  })
})
