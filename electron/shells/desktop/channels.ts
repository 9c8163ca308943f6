/** The two channels between preload and bridge, and the name under which the page finds the carrier. */
export const callChannel = 'breakledger:call'
export const eventChannel = 'breakledger:event'
export const exposedName = 'breakledger'
