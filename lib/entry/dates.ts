/** First day (`YYYY-MM-DD`) that a date of known year, month or day can mean. */
export const firstDayOf = (partial: string): string => `${partial}${'-01-01'.slice(0, 10 - partial.length)}`

/** Last day (`YYYY-MM-DD`) that a date of known year, month or day can mean. */
export function lastDayOf(partial: string): string {
  const [year, month, day] = partial.split('-')
  if (day !== undefined) return partial
  const last = new Date(utcTime(Number(year), month === undefined ? 12 : Number(month), 0))
  return last.toISOString().slice(0, 10)
}

/** `Date.UTC` of a year as it is written: that one takes 0 to 99 for years of the twentieth century. */
export const utcTime = (year: number, month: number, date: number): number =>
  new Date(0).setUTCFullYear(year, month, date)

/** Hours by which the clocks of the islands furthest ahead lead universal time. */
const FURTHEST_AHEAD = 14

/** The day that somebody somewhere calls today: none after it has come yet for anyone. */
export const todayAnywhere = (now: Date): string =>
  new Date(now.getTime() + FURTHEST_AHEAD * 3_600_000).toISOString().slice(0, 10)

/**
 * Years between two days (`YYYY-MM-DD`), rounded down to hundredths; a fifth anniversary is exactly 5.
 * Negative when `to` comes first.
 */
export function yearsBetween(from: string, to: string): number {
  if (to < from) return -yearsBetween(to, from)
  const start = new Date(`${from}T00:00:00Z`)
  const end = new Date(`${to}T00:00:00Z`)
  const anniversary = (years: number) =>
    utcTime(start.getUTCFullYear() + years, start.getUTCMonth(), start.getUTCDate())
  const guess = end.getUTCFullYear() - start.getUTCFullYear()
  const whole = anniversary(guess) <= end.getTime() ? guess : guess - 1
  const span = anniversary(whole + 1) - anniversary(whole)
  return Math.floor((whole + (end.getTime() - anniversary(whole)) / span) * 100) / 100
}
