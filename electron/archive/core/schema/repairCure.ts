/** What to do where a text of the schema is not the one that the program wrote. */
export const repairCure =
  'Close the program and give the command `breakledger repair`: it keeps a copy and writes the known texts again.'
