import { preferences } from './settings.ts'

/** What is said of preferences unasked. */
export const settingsEvents = { 'preferences.changed': preferences }
