import { spawn } from 'node:child_process'
import { describe, expect, test } from 'vitest'
import { isCommandStart } from '#shells/desktop/packedCommands.ts'

const module = new URL('../../../electron/shells/desktop/packedCommands.ts', import.meta.url).href

/** Runs a stand-in for the commands in a program of its own that ends as Electron does, at once. */
function runChild(words: readonly string[], commands: string) {
  const script = `
    import { runPackedCommand } from ${JSON.stringify(module)}
    const code = await runPackedCommand('.', async (address) => { ${commands} })
    process.exit(code ?? 99)`
  return spawn(process.execPath, ['--input-type=module', '--eval', script, '--', ...words], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
}

/** What a program wrote and its exit code; reads only once the pipe has long been full. */
async function outcome(child: ReturnType<typeof runChild>) {
  let out = ''
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text
  })
  const code = await new Promise((resolve) => child.on('close', resolve))
  return { out, code }
}

describe('a packed command', () => {
  test('sees its own words where the commands expect them, whatever switches of the engine stand before', async () => {
    const say = 'process.stdout.write(JSON.stringify([process.argv.slice(2), address.split("/").at(-1)]))'
    const words = ['--ozone-platform=headless', '--command', 'verify', '--archive', 'a b']
    expect(await outcome(runChild(words, say))).toEqual({
      out: JSON.stringify([['verify', '--archive', 'a b'], 'commands.js']),
      code: 0,
    })
  })

  test('hands its exit code on', async () => {
    expect(await outcome(runChild(['--command', 'verify'], 'process.exitCode = 3'))).toMatchObject({ code: 3 })
  })

  test('has written everything before the program ends, more than a pipe holds too', async () => {
    const { out } = await outcome(runChild(['--command', 'verify'], 'process.stdout.write("x".repeat(3_000_000))'))
    expect(out).toHaveLength(3_000_000)
  })

  test('ends although nobody reads it any more', async () => {
    const child = runChild(['--command', 'verify'], 'process.stdout.on("error", () => {}).write("x".repeat(3_000_000))')
    child.stdout.destroy()
    expect(await new Promise((resolve) => child.on('exit', resolve))).toBe(0)
  })

  test('is told from a start of the window', () => {
    expect(isCommandStart(['breakledger', '--ozone-platform=headless', '--command', 'verify'])).toBe(true)
    expect(isCommandStart(['breakledger', '--archive', 'own.breakledger'])).toBe(false)
  })
})
