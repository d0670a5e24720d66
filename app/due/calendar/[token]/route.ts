import { speaking } from '#app/asked.ts'
import { languageOf } from '#lib/db/accounts.ts'
import { calendarOwner, type Due, remindersOf } from '#lib/db/reminders.ts'
import { readSettings } from '#lib/env.ts'
import { answerProblem, problemOf, problemOfThrown } from '../../../_http/problem.ts'
import { words } from '../../../_words/index.ts'
import { linkInLanguage } from '../../../_words/language.ts'
import { icalendar } from '../../icalendar.ts'

/** Somebody's visits due, in their language, for the calendar that knows the address. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> {
  try {
    const { token } = await params
    const owner = /^[\w-]{32}$/.test(token) ? await calendarOwner(token) : null
    if (owner === null) return answerProblem(problemOf(404, words('pages')('notFound.lead')))
    const [due, language] = await Promise.all([remindersOf(owner), languageOf(owner)])
    const open = due.filter(({ seenOn }) => seenOn === null)
    const calendar = speaking(language, () => calendarOf(open))
    return new Response(calendar, {
      headers: {
        'Content-Type': 'text/calendar; charset=utf-8',
        'Content-Disposition': 'inline; filename="visits-due.ics"',
        'Cache-Control': 'private, no-store',
      },
    })
  } catch (thrown) {
    return answerProblem(problemOfThrown(thrown))
  }
}

function calendarOf(due: readonly Due[]): string {
  const t = words('review')
  const { siteUrl } = readSettings()
  const days = due.map(({ id, caseSlug, caseTitle, work, dueOn }) => ({
    uid: `${id}@${new URL(siteUrl).hostname}`,
    on: dueOn,
    title: t('calendar.title', { title: caseTitle }),
    text: t('calendar.text'),
    url: linkInLanguage(`${siteUrl}/cases/${caseSlug}#work-${work}`),
  }))
  return icalendar(t('due.title'), days, new Date())
}
