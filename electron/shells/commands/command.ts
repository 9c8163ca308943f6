import type { ParseArgsOptionsConfig } from 'node:util'
import type { Trouble } from '#contract/errors.ts'

/** What a command may touch of the process it runs in. */
export type CommandIo = {
  /** Resolves when the text is taken; false when the reader has gone away. */
  out(text: string): Promise<boolean>
  /** Progress, warnings and errors. */
  err(text: string): void
  /** Aborted by Ctrl-C, which ends at once a command that never asks for this. */
  readonly interrupt: AbortSignal
  /** Why not all that was given out could be written; null: it could, or its reader wanted no more. */
  lost(): Trouble | null
  /** The person can be asked or shown things: stderr is a terminal. */
  interactive: boolean
}

/** The values of a parsed command line: text, switches, and what may be repeated. */
export type CommandValues = Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>

export type CommandRun = {
  io: CommandIo
  values: CommandValues
  positionals: readonly string[]
  json: boolean
}

/**
 * One command: how it is written, what it does, and its exit code (0 done, 1 failed or a check did not hold). A command loads
 * the parts of the engine that it needs when it runs, so that `--help` waits for no database.
 */
export type Command = {
  name: string
  /** After the name: "FILE...", "BREAK_ID", "[FILE]" where it may be left out; empty when it takes options only. */
  operands: string
  summary: string
  /** Options beyond --json, --archive and --help, each with its line of help. */
  options: Readonly<Record<string, CommandOption>>
  usesArchive: boolean
  /** What else --help says. */
  details: readonly string[]
  run(run: CommandRun): Promise<number>
}

export type CommandOption = ParseArgsOptionsConfig[string] & { value?: string; help: string }

/** The command line is wrong: exit 2, with how to write it. */
export class UsageError extends Error {}
