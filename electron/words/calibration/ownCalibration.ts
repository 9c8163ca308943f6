/** What a calibration with one's own weights is not. */
export const ownCalibration = 'This is your own calibration with known weights, not a traceable certificate.'
