import { createTransport, type Transporter } from 'nodemailer'
import { type MailSettings, readSettings } from '#lib/env.ts'

export interface Mail {
  readonly to: string
  readonly subject: string
  /** Plain text; lines as they are. */
  readonly text: string
}

let kept: { readonly settings: MailSettings; readonly transport: Transporter } | undefined

/** Whether the site can send mail at all: SMTP_URL is set. */
export const sendsMail = (): boolean => readSettings().mail !== undefined

/**
 * Hands one mail to the server of SMTP_URL.
 *
 * @returns true once the server has taken it; false when no server is set, or it did not take it (the log says why,
 *   without the address)
 */
export async function sendMail(mail: Mail): Promise<boolean> {
  const { mail: settings } = readSettings()
  if (settings === undefined) return false
  if (kept?.settings.url !== settings.url) {
    kept?.transport.close()
    kept = { settings, transport: createTransport({ url: settings.url, ...TIMES }) }
  }
  try {
    const { to, subject, text } = mail
    // An address that holds a list, or a name with one, is one recipient and no more; nor can text add a header.
    const sent = kept.transport.sendMail({
      from: settings.from,
      to: { name: '', address: to },
      subject,
      text,
    })
    await Promise.race([sent, giveUp()])
    return true
  } catch (error) {
    console.error(`Mail was not sent: ${(error as Error).message.replaceAll(mail.to, 'the address')}`)
    return false
  }
}

/** A mail server that does not answer keeps nobody waiting for long, nor does one that answers by the drop. */
const TIMES = { connectionTimeout: 10_000, greetingTimeout: 10_000, socketTimeout: 20_000 }
const LONGEST_MS = 120_000

const giveUp = () =>
  new Promise<never>((_, reject) => {
    setTimeout(() => reject(new Error('the mail server took too long')), LONGEST_MS).unref()
  })
