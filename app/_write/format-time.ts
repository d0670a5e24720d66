import { eachLanguage, locale, TIME_ZONE } from '../_words/index.ts'

const format = eachLanguage(
  (language) =>
    new Intl.DateTimeFormat(locale(language), {
      dateStyle: 'long',
      timeStyle: 'short',
      timeZone: TIME_ZONE,
      hourCycle: 'h23',
    }),
)

/** A moment as a day and a time in the site's one time zone, which is named. */
export const formatTime = (at: Date): string => `${format().format(at)} ${TIME_ZONE}`

const clock = eachLanguage(
  (language) =>
    new Intl.DateTimeFormat(locale(language), {
      timeStyle: 'medium',
      timeZone: TIME_ZONE,
      hourCycle: 'h23',
    }),
)

/** The time of a moment of today. */
export const timeOfDay = (at: Date): string => `${clock().format(at)} ${TIME_ZONE}`
