import type { Counted, Timed } from '#lib/evidence/index.ts'

/** `13+` was last seen on 13, `13` changed on it. */
export const timed = (words: string): Timed[] =>
  words.split(' ').map((word) => ({ time: Number.parseFloat(word), event: !word.endsWith('+') }))

/** `4-11` changed after 4 and by 11; `45-` not yet by 45. */
export const intervals = (words: string): Counted[] =>
  words.split(' ').map((word) => {
    const [from, to] = word.split('-')
    return { from: Number(from), to: to === '' ? null : Number(to) }
  })

/** Weeks in remission, 42 children; Freireich et al. 1963, as in Gehan 1965, pairing ignored. */
export const SIX_MP = timed('6 6 6 7 10 13 16 22 23 6+ 9+ 10+ 11+ 17+ 19+ 20+ 25+ 32+ 32+ 34+ 35+')
export const PLACEBO = timed('1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23')

/** Weeks to relapse with and without maintenance; Miller 1997, `aml` in R's survival package. */
export const MAINTAINED = timed('9 13 13+ 18 23 28+ 31 34 45+ 48 161+')
export const NOT_MAINTAINED = timed('5 5 8 8 12 16+ 23 27 30 33 43 45')

/** Glioma, weeks; Bland and Altman 2004. */
export const GLIOMA = [
  timed('6 13 21 30 31+ 37 38 47+ 49 50 63 79 80+ 82+ 82+ 86 98 149+ 202 219'),
  timed('10 10 12 13 14 15 16 17 18 20 24 24 25 28 30 33 34+ 35 37 40 40 40+ 46 48 70+ 76 81 82 91 112 181'),
] as const

/** Two arms of ten, of a university course; carried by SciPy's tests. */
export const TWO_ARMS = [
  timed('8 12 26 14 21 27 8+ 32+ 20+ 40+'),
  timed('33 28 41 48+ 48+ 25+ 37+ 48+ 25+ 43+'),
] as const

/** Twenty subjects of the same course. */
export const TWENTY = timed('24+ 3 11+ 19+ 24+ 13+ 14 2+ 18+ 17 24+ 21+ 12+ 1 10+ 23 6+ 5 9+ 17+')

/** Ten subjects, the first two last seen before anything happened; carried by SciPy's tests. */
export const TEN = timed('37+ 43+ 47 56 60+ 62+ 71+ 77 80 81')

/** Months to breast retraction seen at clinic visits; Finkelstein and Wolfe 1985. */
export const RADIATION = intervals(
  '45- 6-10 0-7 46- 46- 7-16 17- 7-14 37-44 0-8 4-11 15- 11-15 22- 46- 46- 25-37 46- 26-40 46- 27-34 36-44 ' +
    '46- 36-48 37- 40- 17-25 46- 11-18 38- 5-12 37- 0-5 18- 24- 36- 5-11 19-35 17-25 24- 32- 33- 19-26 37- 34- 36-',
)
export const CHEMOTHERAPY = intervals(
  '8-12 0-22 24-31 17-27 17-23 24-30 16-24 13- 11-13 16-20 18-25 17-26 32- 23- 44-48 14-17 0-5 5-8 12-20 11- ' +
    '33-40 31- 13-39 19-32 34- 13- 16-24 35- 15-22 11-17 22-32 10-35 30-34 13- 10-17 8-21 4-9 11- 14-19 4-8 ' +
    '34- 30-36 18-24 16-60 35-39 21- 11-20 48-',
)

/** Psychiatric diagnoses of 30 patients by six raters each, five classes; Fleiss 1971. */
export const DIAGNOSES = (
  '444444 222555 233335 555555 222444 113333 333355 113334 114444 555555 144444 124444 222333 144444 224445 ' +
  '333335 111455 111112 224444 133555 555555 244444 224555 114444 144445 222224 111155 224444 133333 555555'
)
  .split(' ')
  .map((scores) => [1, 2, 3, 4, 5].map((step) => [...scores].filter((s) => s === String(step)).length))
