/**
 * Version of the sums, carried in every address and answer. Raise it whenever the same inputs can give
 * another printed figure: a formula, a constant, an assumed figure, the draws behind a range.
 */
export const SUMS_VERSION = 2
