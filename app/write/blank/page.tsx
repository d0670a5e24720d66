import type { Metadata } from 'next'
import { ownDraft } from '#lib/db/drafts.ts'
import { currentActor, enter } from '../../_http/actor.ts'
import { redirect } from '../../_http/redirect.ts'
import { NotYours } from '../../_ui/not-yours.tsx'
import { Notice } from '../../_ui/notice.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../../_ui/query.ts'
import { words } from '../../_words/index.ts'
import { BlankForm } from '../../_write/blank-form.tsx'
import { blankViewOf } from '../../_write/blank-view.ts'
import { type Asked, askedFrom, givenOf, isKind, type Start, startOf } from '../begin-from.ts'
import '../../_write/write.css'

const t = words('write')

interface Props {
  searchParams: Promise<Query>
}

const readAsked = (query: Query) => askedFrom((name) => first(query[name]))

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const asked = readAsked(await searchParams)
  const actor = await currentActor()
  const start = actor.kind === 'member' ? await startOf(actor, asked) : null
  return { title: t('blank.title', { title: titleOf(asked, start) }), robots: { index: false } }
}

/** What is written on the form, in its own words. */
function titleOf({ kind, of }: Asked, start: Start | null): string {
  if (of !== '') return t('making.visit.title', { title: start?.title ?? of })
  const known = start?.kind ?? kind
  return isKind(known) ? t(`begin.kind.${known}`) : t('begin.title')
}

/**
 * A blank form for where there is no signal: a browser keeps it ahead, and what is written on its copy becomes a draft
 * once there is a signal, under a key that the browser made. A draft that is there already goes on at its own address.
 */
export default async function BlankPage({ searchParams }: Props) {
  const query = await searchParams
  const [asked, key] = [readAsked(query), first(query.key)]
  const given = givenOf(asked)
  const member = await enter('/write/blank', addressWith('/write/blank', { ...given, key }))
  if (!member) return <NotYours />
  if (key !== undefined && (await ownDraft(member.key, key)) !== null) redirect(`/write/${key}`)
  const start = await startOf(member, asked)
  // What was to begin from something that is there no longer still shows, to be copied.
  const kind = start?.kind ?? (asked.of !== '' ? 'visit' : isKind(asked.kind) ? asked.kind : undefined)
  if (kind === undefined) return <PageHead title={t('begin.title')} lead={t('begin.notKind')} />
  const view = await blankViewOf(member, kind, start)
  const title = titleOf(asked, start)
  return (
    <>
      <PageHead title={title} kicker={<a href="/kept">{words('offline')('title')}</a>} lead={t('blank.lead')}>
        {start === null && (
          <Notice kind="caution">
            <p>{t(asked.of === '' ? 'begin.noStart' : 'begin.noCase')}</p>
          </Notice>
        )}
      </PageHead>
      <BlankForm view={view} asked={{ ...given, kind }} title={title} />
    </>
  )
}
