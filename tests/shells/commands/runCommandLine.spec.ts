import { describe, expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import { type Command, UsageError } from '#shells/commands/command.ts'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const echo: Command = {
  name: 'echo',
  operands: 'WORD...',
  summary: 'Says its words.',
  options: { times: { type: 'string', value: 'N', help: 'how often' } },
  usesArchive: true,
  details: ['Nothing else.'],
  async run({ io, positionals, values, json }) {
    if (positionals[0] === 'usage') throw new UsageError('--times is odd.')
    if (positionals[0] === 'trouble') throw new Trouble('disk-full', 'The disk is full.', 'Free some space.')
    if (positionals[0] === 'fault') throw new Error('a slip')
    await io.out(JSON.stringify({ positionals, times: values.times, archive: values.archive, json }))
    return 0
  },
}

describe('runCommandLine', () => {
  it('hands operands and options to the command', async () => {
    const { code, lines } = await runWords([echo], ['echo', 'a', '--times', '3', 'b', '--archive=x', '--json'])
    expect(code).toBe(0)
    expect(lines).toEqual([{ positionals: ['a', 'b'], times: '3', archive: 'x', json: true }])
  })

  it('sends the terminal no character that steers it, whoever wrote the text', async () => {
    const { err } = await runWords([echo], ['\u001b[2Jno\u200bname'])
    expect(err).toContain('There is no command "<U+001B>[2Jno<U+200B>name"')
    const { out } = await runWords([echo], ['echo', '\u009b31m'])
    expect(out).toContain('<U+009B>31m')
  })

  it.each([
    [['nonsense'], /There is no command "nonsense"/],
    [['echo'], /needs WORD/],
    [['echo', '--loud', 'a'], /--loud/],
    [['echo', 'a', '--times'], /--times/],
    [['echo', 'usage'], /--times is odd/],
    [[], /Usage: breakledger COMMAND/],
  ])('exits 2 and says how to write it for %j', async (words, said) => {
    const { code, out, err } = await runWords([echo], words)
    expect(code).toBe(2)
    expect(err).toMatch(said)
    expect(err).toContain('Usage:')
    expect(out).toBe('')
  })

  it('exits 1 with message and hint when the operation fails', async () => {
    const { code, out, err } = await runWords([echo], ['echo', 'trouble'])
    expect({ code, out, err }).toEqual({ code: 1, out: '', err: 'The disk is full.\nFree some space.\n' })
    expect((await runWords([echo], ['echo', 'fault'])).code).toBe(1)
  })

  it('prints help on stdout', async () => {
    const { code, out, err } = await runWords([echo], ['echo', '--help'])
    expect(code).toBe(0)
    expect(err).toBe('')
    expect(out).toMatch(/--times N +how often/)
    expect(out).toContain('--archive FILE')
    expect((await runWords([echo], ['--help'])).out).toContain('Says its words.')
  })
})

describe('every command', () => {
  it.each(commands.map(({ name }) => name))('%s explains itself', async (name) => {
    const { code, out } = await runWords(commands, [name, '--help'])
    expect(code).toBe(0)
    expect(out).toContain(`Usage: breakledger ${name}`)
    expect(out).toContain('--json')
  })

  it.each([
    ['capture without a port', ['capture'], /--port/],
    ['a baud rate that is no number', ['capture', '--port', 'p', '--baud', 'fast'], /--baud/],
    ['a scale of 0', ['capture', '--port', 'p', '--scale', '0'], /--scale must be a number other than 0/],
    ['a rated load that may be two', ['capture', '--port', 'p', '--capacity', '1,234'], /may be 1\.234 or 1234/],
    ['a rated load in millimetres', ['capture', '--port', 'p', '--capacity', '5 mm'], /has a unit that does not fit/],
    ['scale and calibration', ['capture', '--port', 'p', '--scale', '1', '--calibration', '1'], /exclude each other/],
    ['half a break', ['capture', '--port', 'p', '--breaks', '1.5'], /--breaks must be a whole number from 1/],
    ['an unknown line format', ['capture', '--port', 'p', '--line-format', 'morse'], /one of number, columns, checked/],
    [
      'an unknown column',
      ['capture', '--port', 'p', '--line-format', 'columns', '--columns', 'time_us,load'],
      /"load"/,
    ],
    ['columns for another format', ['capture', '--port', 'p', '--columns', 'counts'], /--line-format columns only/],
    ['an unknown scenario', ['emulate', '--scenario', 'sine'], /--scenario/],
    ['a rate beyond 10 kHz', ['emulate', '--rate', '20000'], /up to 10000/],
    ['a break id that is a word', ['curve', 'first'], /BREAK_ID/],
    ['two break ids', ['curve', '1', '2'], /takes one operand/],
    ['evaluate without a file', ['evaluate'], /needs FILE/],
    ['a port number out of range', ['serve', '--http-port', '70000'], /--http-port/],
    ['an operand that nobody takes', ['verify', 'now'], /takes no operand/],
  ])('refuses %s with exit 2', async (_what, words, said) => {
    const { code, out, err } = await runWords(commands, words)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(said)
  })
})
