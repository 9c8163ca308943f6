/** Numbers as they were printed: the last digit is rounded, and so exact is what is compared. */
type Printed = Readonly<Record<string, string | readonly string[]>>

/** A data set of samples/published with the words after `findings --table FILE --json`, and what the lines chosen by `line` must say. */
export type PublishedStudy = {
  readonly file: string
  readonly source: string
  readonly words: readonly string[]
  readonly says: readonly { readonly line: Readonly<Record<string, unknown>>; readonly numbers: Printed }[]
}

const pair = (method: string, a: string, b: string, numbers: Printed) => ({
  line: { kind: 'pair', method, a, b },
  numbers,
})

/**
 * Published data sets and what was published of them; where a publication rounds more than R 4.2.2 does, R's digits. The data are in
 * samples/published, which says where each comes from.
 */
export const publishedStudies: readonly PublishedStudy[] = [
  {
    file: 'weibull-censored.csv',
    // The handbook prints a characteristic life of 606.5280, which is not quite the maximum: R survreg has 606.527558.
    source: 'NIST/SEMATECH e-Handbook 8.4.1.3; R survreg',
    words: ['--only', 'censored-fit', '--wood-failure', 'censored'],
    says: [
      {
        line: { distribution: 'weibull', failures: 10, censored: 10 },
        numbers: {
          'parameters.scale': '606.527558',
          'parameters.shape': '1.7208',
          logLikelihood: '-75.1346182',
          aic: '154.269236',
          meanMPa: '540.737',
          medianMPa: '490.1738',
          b10MPa: '164.0224',
        },
      },
      {
        line: { distribution: 'lognormal' },
        numbers: { 'parameters.mu': '6.2260151', 'parameters.sigma': '0.908914', aic: '154.39' },
      },
    ],
  },
  {
    file: 'removed-units.csv',
    source: 'NIST/SEMATECH e-Handbook 8.2.1.5',
    words: ['--only', 'survival'],
    says: [
      {
        line: { kind: 'survival' },
        numbers: {
          strengthMPa: ['10', '32', '56', '98', '122', '181'],
          survival: ['0.95', '0.90', '0.847058824', '0.794117647', '0.737394958', '0.670359053'],
          standardError: ['0.048733972', '0.067082039', '0.081388320', '0.091921280', '0.101356803', '0.112140686'],
          atRisk: ['20', '19', '17', '16', '14', '11'],
        },
      },
    ],
  },
  {
    file: 'masses.csv',
    source: 'Tietjen and Moore (1972), NIST/SEMATECH e-Handbook 1.3.5.17.1: two-sided at 10 % is its one-sided 5 %',
    words: ['--only', 'outlier,group-summary', '--confidence', '0.9'],
    says: [
      { line: { kind: 'group-summary' }, numbers: { meanMPa: '206.43375', sdMPa: '15.8525644' } },
      { line: { method: 'grubbs', specimen: '8' }, numbers: { statistic: '2.4687646', critical: '2.032' } },
    ],
  },
  {
    file: 'many-outliers-plus-1.csv',
    source: 'Rosner (1983), NIST/SEMATECH e-Handbook 1.3.5.17.3',
    words: ['--only', 'outlier'],
    says: [
      { line: { method: 'generalized-esd', strengthMPa: 7.01 }, numbers: { statistic: '3.119', critical: '3.159' } },
      { line: { method: 'generalized-esd', strengthMPa: 6.42 }, numbers: { statistic: '2.943', critical: '3.151' } },
      { line: { method: 'generalized-esd', strengthMPa: 6.34 }, numbers: { statistic: '3.179', critical: '3.144' } },
    ],
  },
  {
    file: 'four-groups.csv',
    source: 'NIST/SEMATECH e-Handbook 7.4.3.3 and 7.4.7.1; R TukeyHSD',
    words: ['--only', 'group-summary,means-test,pair,letters'],
    says: [
      { line: { kind: 'group-summary', group: '3' }, numbers: { meanMPa: '8.56', n: '5' } },
      {
        line: { method: 'one-way' },
        numbers: { statistic: '9.72384', df1: '3', df2: '16', p: '0.000684' },
      },
      pair('tukey-kramer', '1', '2', { lowMPa: '-4.467368', highMPa: '-0.292632', p: '0.022793' }),
      pair('tukey-kramer', '1', '3', { lowMPa: '-5.307368', highMPa: '-1.132632', p: '0.002211' }),
      pair('tukey-kramer', '1', '4', { lowMPa: '-2.247368', highMPa: '1.927368', p: '0.996121' }),
      pair('tukey-kramer', '2', '3', { lowMPa: '-2.93', highMPa: '1.25', p: '0.664465' }),
      pair('tukey-kramer', '2', '4', { lowMPa: '0.13', highMPa: '4.31', p: '0.035154' }),
      pair('tukey-kramer', '3', '4', { lowMPa: '0.97', highMPa: '5.15', p: '0.003451' }),
    ],
  },
  {
    file: 'blood-counts.csv',
    source: 'Dunnett (1955), two-sided; p and intervals as R multcomp and scipy have them, whose last digit is chance',
    words: ['--only', 'against-reference', '--reference', 'control'],
    says: [
      {
        line: { group: 'A', reference: 'control' },
        numbers: { statistic: '0.85703', p: '0.6201', lowMPa: '-1.256', highMPa: '2.556' },
      },
      {
        line: { group: 'B', reference: 'control' },
        numbers: { statistic: '3.69375', p: '0.0058', lowMPa: '0.840', highMPa: '4.416' },
      },
    ],
  },
  {
    file: 'dust-clearance.csv',
    source: 'Hollander and Wolfe (1973), 6.1, also in the help of R kruskal.test',
    words: ['--only', 'means-test'],
    says: [{ line: { method: 'kruskal-wallis' }, numbers: { statistic: '0.7714286', df1: '2', p: '0.6799648' } }],
  },
  {
    file: 'ranks-with-ties.csv',
    // Printed there without a correction for ties: 4.0987.
    source: 'a textbook page on the Kruskal-Wallis test; corrected for ties by R kruskal.test',
    words: ['--only', 'means-test'],
    says: [{ line: { method: 'kruskal-wallis' }, numbers: { statistic: '4.154749', p: '0.125259' } }],
  },
  {
    file: 'sleep-plus-10.csv',
    source: 'Student (1908) as R has it, with 10 added to each value; R t.test, both spreads pooled and not',
    words: ['--only', 'means-test,pair'],
    says: [
      { line: { method: 'welch' }, numbers: { df1: '1', df2: '17.7764735', p: '0.0793941' } },
      pair('games-howell', '1', '2', {
        differenceMPa: '-1.58',
        lowMPa: '-3.3654832',
        highMPa: '0.2054832',
        df: '17.7764735',
        p: '0.0793941',
      }),
      pair('tukey-kramer', '1', '2', { p: '0.0791867' }),
    ],
  },
  {
    file: 'gears.csv',
    source: 'NIST/SEMATECH e-Handbook 1.3.5.7 and 1.3.5.10; R',
    words: ['--only', 'spread-test'],
    says: [
      { line: { method: 'brown-forsythe' }, numbers: { statistic: '1.705918', df1: '9', df2: '90', p: '0.0991' } },
      // Exact arithmetic; 2.159464 is printed in places.
      { line: { method: 'levene' }, numbers: { statistic: '2.1594598565', p: '0.0322' } },
      { line: { method: 'bartlett' }, numbers: { statistic: '20.785873', df1: '9', p: '0.013636' } },
    ],
  },
  {
    file: 'silver.csv',
    source: 'NIST StRD, atomic weight of silver: certified F',
    words: ['--only', 'means-test'],
    says: [{ line: { method: 'one-way' }, numbers: { statistic: '15.94673357', df1: '1', df2: '46' } }],
  },
  {
    file: 'trend-with-ties.csv',
    source: 'EPA QA/G-9S, example of the Mann-Kendall trend test; R for the fifth digit of z',
    words: ['--only', 'trend'],
    says: [
      {
        line: { test: 'mann-kendall' },
        numbers: { statistic: '22', z: '1.6849498', p: '0.0920', slopeMPaPerYear: '12.0' },
      },
    ],
  },
  {
    file: 'ratios-of-means.csv',
    source: 'Fieller (1954) on the groups of NIST/SEMATECH e-Handbook 7.4.7.1, by R',
    words: ['--only', 'retention'],
    says: [
      { line: { group: '2/1' }, numbers: { ratio: '1.44569288', low: '1.12325571', high: '1.90744498' } },
      { line: { group: '3/1' }, numbers: { ratio: '1.60299625', low: '1.22076874', high: '2.18503309' } },
      { line: { group: '4/1' }, numbers: { ratio: '1.02996255', low: '0.77343492', high: '1.37495058' } },
    ],
  },
  {
    file: 'hits-plus-10.csv',
    // From memory: squares about the mean 18.96, shrinkage 0.791; estimates of the first and last 0.290 and 0.239, here on the scale of the data.
    source: 'Efron and Morris (1975): each player as two blocks whose mean has the variance 1 of the paper',
    words: ['--only', 'shrunken-mean'],
    says: [
      { line: { group: 'player 1' }, numbers: { meanMPa: '7.09', shrinkagePercent: '79.1', betweenSDMPa: '0.34' } },
      { line: { group: 'player 18' }, numbers: { meanMPa: '6.31', shrinkagePercent: '79.1' } },
    ],
  },
  {
    file: 'adhesive-bond-b.csv',
    // The model published with the data joins the temperatures by an activation energy, which findings does not fit.
    source:
      'Escobar, Meeker, Kugler and Kramer (2003), R package ADDT; each temperature by itself by R lm and cor.test',
    words: ['--only', 'trend,ageing-model'],
    says: [
      {
        line: { group: '50 °C', model: 'square-root-time' },
        numbers: {
          'parameters.startMPa': '88.13213609',
          'parameters.slopeMPaPerMonth': '-7.523252488',
          'standardErrors.startMPa': '2.509865001',
          'standardErrors.slopeMPaPerMonth': '0.959523216',
          sigmaMPa: '8.47526714',
          aicc: '274.914221671',
        },
      },
      {
        line: { group: '60 °C', model: 'log-time' },
        numbers: { 'parameters.slopeMPaPerMonth': '-18.89307651', aicc: '157.836043328' },
      },
      { line: { group: '50 °C', test: 'jonckheere' }, numbers: { z: '-5.557902262' } },
      { line: { group: '70 °C', test: 'jonckheere' }, numbers: { z: '-4.601414124' } },
    ],
  },
]
