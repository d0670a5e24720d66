import type { SignedIn } from '#lib/db/sessions.ts'
import { Refusal } from '#lib/errors.ts'
import { sendMail } from '#lib/mail/send-mail.ts'
import { deviceOf } from './device.ts'
import { countAgainst } from './limits.ts'
import { makeLink } from './links.ts'
import type { From } from './sign-in.ts'

/** Words of a mail, in which the link stands. */
export type MailWords = (link: string) => { readonly subject: string; readonly text: string }

/**
 * Sends a link to sign in with; to an unknown address the same link opens an account, so that nobody can tell which
 * addresses are known.
 *
 * @throws Refusal `too-many`; `unavailable` when the mail did not go out
 */
export async function sendSignInLink(email: string, from: From, words: MailWords): Promise<void> {
  const known = deviceOf(from.device, email)
  // Who asks for links to somebody else's address uses up nothing that its owner needs.
  if (known !== null) await countAgainst('link-own', `${email} ${known}`)
  else {
    await countAgainst('link-from', from.address)
    await countAgainst('link-to', email)
  }
  await send(email, await makeLink({ purpose: 'sign-in', email, accountId: null }), words)
}

/** Sends a link that confirms an address as the account's; refuses as {@link sendSignInLink} does. */
export async function sendConfirmLink(
  { accountId }: SignedIn,
  email: string,
  from: From,
  words: MailWords,
): Promise<void> {
  await countAgainst('link-from', from.address)
  await countAgainst('link-own', accountId)
  await send(email, await makeLink({ purpose: 'confirm-address', email, accountId }), words)
}

async function send(to: string, link: string, words: MailWords): Promise<void> {
  if (!(await sendMail({ to, ...words(link) })))
    throw new Refusal('unavailable', 'The mail could not be sent just now. Try again in some minutes.')
}
