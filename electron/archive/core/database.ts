import type BetterSqlite from 'better-sqlite3'

/** An open connection to an archive's file. */
export type Database = BetterSqlite.Database
