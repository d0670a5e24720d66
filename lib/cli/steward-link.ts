import { makeStewardLink } from '#lib/auth/links.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

/** `npm run steward-link`: a one-time link that makes whoever opens it the first steward. */
export const run = (): Promise<number> =>
  withDatabase(async () => {
    const link = await makeStewardLink()
    say(
      link === null
        ? 'There is a steward already; stewards name others on the site.'
        : `Whoever opens this link first, within a day, is steward:\n  ${link}`,
    )
    return link === null ? 1 : 0
  })
