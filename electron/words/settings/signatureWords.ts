/** What is said where somebody must sign and has not. */
export const askForName = 'Enter your name or initials.'
