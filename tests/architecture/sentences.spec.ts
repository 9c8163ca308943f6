import { describe, expect, it } from 'vitest'
import { projectFiles, readProjectFile } from './projectFiles.ts'
import { saidTwice, sentencesOf, textsOf } from './sentences.ts'

const product = projectFiles().filter((path) => /^(electron|renderer)\/.*\.tsx?$/.test(path))

describe('a sentence', () => {
  it('stands at one place of the program alone, whoever says it', () => {
    expect(saidTwice(product.flatMap((path) => textsOf(path, readProjectFile(path))))).toEqual([])
  })

  it('is found in strings, templates and between tags, whatever is put into it and however it is marked', () => {
    const page = textsOf('page.tsx', 'const a = <p>\n  The true peak  may lie\n  much higher.\n</p>')
    const command = textsOf('command.ts', `const b = 'the true peak may lie much higher'`)
    const report = textsOf('report.ts', `const c = \`Wait. The true peak may lie \${boundN} N higher.\``)
    const record = textsOf('record.ts', 'const d = "The true peak may lie {} N higher!"')
    expect(saidTwice([...page, ...report])).toEqual([])
    expect(saidTwice([...page, ...command])).toEqual(['page.tsx:2, command.ts:1: the true peak may lie much higher'])
    expect(saidTwice([...report, ...record])).toEqual(['report.ts:1, record.ts:1: the true peak may lie {} higher'])
  })

  it('is neither a label, nor a name of a module, nor a statement of SQL', () => {
    expect(sentencesOf('Uncertainty of the force')).toEqual([])
    expect(sentencesOf('Rated load.')).toEqual([])
    expect(sentencesOf('seq = NEW.seq OR (kind = NEW.kind AND record_id = NEW.record_id)')).toEqual([])
    expect(textsOf('a.ts', "import { a } from './a sentence of more than six words that is a path.ts'")).toEqual([])
  })
})
