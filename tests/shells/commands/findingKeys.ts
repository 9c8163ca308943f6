const cell = ['group', 'ageMonths']

/** Keys of each kind of line besides its kind, as whoever reads the output relies on them. */
export const findingKeys: Readonly<Record<string, readonly string[]>> = {
  'group-summary': [
    ...cell,
    ...['treatment', 'n', 'excluded', 'censored', 'meanMPa', 'sdMPa', 'cvPercent', 'meanLowMPa', 'meanHighMPa'],
    ...['medianMPa', 'q1MPa', 'q3MPa', 'minMPa', 'maxMPa', 'lowerToleranceMPa', 'lowerToleranceNonparametricMPa'],
    ...['woodFailureMeanPercent', 'allWoodSharePercent'],
  ],
  'censored-fit': [
    ...cell,
    ...['distribution', 'failures', 'censored', 'logLikelihood', 'aic', 'aicc', 'parameters', 'standardErrors'],
    ...['meanMPa', 'meanLowMPa', 'meanHighMPa', 'medianMPa', 'b10MPa', 'b10LowMPa', 'b10HighMPa', 'intervalMethod'],
  ],
  survival: [...cell, 'strengthMPa', 'survival', 'standardError', 'atRisk'],
  'spread-test': ['ageMonths', 'method', 'statistic', 'df1', 'df2', 'p'],
  'means-test': ['ageMonths', 'method', 'statistic', 'df1', 'df2', 'p'],
  pair: ['ageMonths', 'method', 'a', 'b', 'differenceMPa', 'lowMPa', 'highMPa', 'statistic', 'df', 'p'],
  'against-reference': [...cell, 'reference', 'differenceMPa', 'lowMPa', 'highMPa', 'statistic', 'p'],
  letters: ['ageMonths', 'method', 'letters'],
  equivalence: ['ageMonths', 'a', 'b', 'marginPercent', 'pLower', 'pUpper', 'p', 'equivalent'],
  rank: [...cell, 'rank', 'rankLow', 'rankHigh', 'firstShare'],
  'shrunken-mean': [...cell, 'meanMPa', 'lowMPa', 'highMPa', 'shrinkagePercent', 'betweenSDMPa'],
  outlier: [...cell, 'method', 'specimen', 'strengthMPa', 'statistic', 'critical', 'p'],
  trend: [...cell, 'test', 'statistic', 'z', 'p', 'slopeMPaPerYear'],
  retention: [...cell, 'referenceAgeMonths', 'ratio', 'low', 'high', 'bounded'],
  'ageing-model': [...cell, 'model', 'parameters', 'standardErrors', 'sigmaMPa', 'aicc', 'weight', 'failed'],
  forecast: [...cell, 'meanMPa', 'lowMPa', 'highMPa', 'retentionPercent', 'belowShareProbability'],
  detectable: [...cell, 'changePercent', 'power'],
  note: [...cell, 'about', 'text'],
}
