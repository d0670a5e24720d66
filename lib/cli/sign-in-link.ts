import { makeLink } from '#lib/auth/links.ts'
import { emailField } from '#lib/auth/sign-in.ts'
import { accountByEmail } from '#lib/db/accounts.ts'
import { Halt } from '#lib/errors.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

/**
 * `npm run sign-in-link -- name@place.example`: a one-time link for somebody who lost their password, where the site
 * sends no mail. Give it to nobody but the owner of the address.
 */
export function run([address]: readonly string[]): Promise<number> {
  const email = emailField.safeParse(address)
  if (!email.success) throw new Halt('Say for whom: npm run sign-in-link -- name@place.example')
  return withDatabase(async () => {
    if ((await accountByEmail(email.data)) === null)
      throw new Halt(`No account has the address ${email.data}.`)
    const link = await makeLink({ purpose: 'sign-in', email: email.data, accountId: null })
    say(`Whoever opens this link first, within an hour, is signed in as ${email.data}:\n  ${link}`)
    return 0
  })
}
