import { closeDb } from '#lib/db/client.ts'
import { sendMail, sendsMail } from '#lib/mail/send-mail.ts'
import { type MailNews, mailOut } from '#lib/workflow/mail-out.ts'
import { speaking } from '../../app/_words/asked.ts'
import { formatDate } from '../../app/_words/format.ts'
import { words } from '../../app/_words/index.ts'
import { linkInLanguage } from '../../app/_words/language.ts'
import { say } from './say.ts'

/** How often it is looked whether mail is due. */
const EVERY_MS = 5 * 60_000

/**
 * Sends notices and reminders by mail while the site runs; where SMTP is not set it does nothing. A turn that fails
 * is told and tried again.
 *
 * @param siteUrl what links begin with
 */
export function startPost(siteUrl: string): { stop(): Promise<void> } {
  if (!sendsMail()) return { stop: async () => {} }
  let turn = Promise.resolve()
  const look = () => {
    turn = turn.then(() => mailDue(siteUrl)).catch((error: Error) => say(`Mail waits: ${error.message}`))
  }
  const clock = setInterval(look, EVERY_MS)
  look()
  return {
    stop: async () => {
      clearInterval(clock)
      await turn
      await closeDb()
    },
  }
}

/** One turn: sends all that is due. Resolves once it is sent. */
export async function mailDue(siteUrl: string): Promise<void> {
  await mailOut((news) => sendMail({ to: news.to, ...mailOf(news, siteUrl) }))
}

/** The mail that tells of this, in its reader's language. */
export const mailOf = (news: MailNews, siteUrl: string): { subject: string; text: string } =>
  speaking(news.language, () => mailIn(news, siteUrl))

function mailIn(news: MailNews, siteUrl: string): { subject: string; text: string } {
  const t = words('review')
  const { what, kind, slug, title, dueOn, work } = news
  const subject = t('mail.subject', { title })
  if (what === 'due') {
    const link = linkInLanguage(`${siteUrl}/cases/${slug}#work-${work ?? ''}`)
    const date = formatDate(dueOn ?? '')
    return { subject, text: t('mail.due', { title, date, link, list: linkInLanguage(`${siteUrl}/due`) }) }
  }
  const link = linkInLanguage(`${siteUrl}/entries/${slug}/versions`)
  const name = kind === 'visit' ? t('mail.visit', { slug }) : title
  return {
    subject: t('mail.subject', { title: name }),
    text: t('mail.notice', { title: name, words: t(`notice.${what}`), link }),
  }
}
