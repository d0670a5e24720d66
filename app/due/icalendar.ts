/** One whole day in a calendar. */
export interface CalendarDay {
  /** Stays the same, so that a calendar changes what it has instead of adding to it. */
  readonly uid: string
  /** `YYYY-MM-DD`. */
  readonly on: string
  readonly title: string
  readonly text: string
  readonly url: string
}

/**
 * A calendar of whole days as RFC 5545 has it: lines end in CR LF, none is longer than 75 bytes, and a longer one goes
 * on in the next after a space.
 *
 * @param stamp when the calendar was made
 */
export function icalendar(name: string, days: readonly CalendarDay[], stamp: Date): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Putlog//Visits due//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    `X-WR-CALNAME:${escapeText(name)}`,
    ...days.flatMap(({ uid, on, title, text, url }) => [
      'BEGIN:VEVENT',
      `UID:${uid}`,
      `DTSTAMP:${utc(stamp)}`,
      `DTSTART;VALUE=DATE:${on.replaceAll('-', '')}`,
      `DTEND;VALUE=DATE:${nextDay(on).replaceAll('-', '')}`,
      `SUMMARY:${escapeText(title)}`,
      `DESCRIPTION:${escapeText(text)}`,
      `URL:${url}`,
      'TRANSP:TRANSPARENT',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ]
  return lines.map((line) => `${fold(line)}\r\n`).join('')
}

const escapeText = (text: string) => text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n')

const utc = (time: Date) => `${time.toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`

const nextDay = (on: string) =>
  new Date(Date.parse(`${on}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10)

const MOST_BYTES = 75

/** Breaks between characters, never within one. */
function fold(line: string): string {
  let [folded, bytes] = ['', 0]
  for (const character of line) {
    const size = Buffer.byteLength(character)
    if (bytes + size > MOST_BYTES) {
      folded += '\r\n '
      bytes = 1
    }
    folded += character
    bytes += size
  }
  return folded
}
