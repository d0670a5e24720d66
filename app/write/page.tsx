import type { Metadata } from 'next'
import { type DraftLine, listDrafts } from '#lib/db/drafts.ts'
import { enter } from '../_http/actor.ts'
import { labelOf } from '../_ui/label.ts'
import { NotYours } from '../_ui/not-yours.tsx'
import { Notice } from '../_ui/notice.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { BegunList } from '../_write/begun-list.tsx'
import { begunWords } from '../_write/begun-words.ts'
import { formatTime } from '../_write/format-time.ts'
import { KindsList } from '../_write/kinds-list.tsx'

const t = words('write')

export const generateMetadata = (): Metadata => ({ title: t('begin.title'), robots: { index: false } })

/** What one may begin to write, and what one has begun. */
export default async function WritePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const member = await enter('/write', addressWith('/write', { after: first(query.after) }))
  if (!member) return <NotYours />
  const { drafts, next } = await listDrafts(member.key, { after: first(query.after) })
  return (
    <>
      <PageHead title={t('begin.title')} lead={t('begin.lead')}>
        {query.gone !== undefined && (
          <Notice kind="note">
            <p>{t('begin.gone')}</p>
          </Notice>
        )}
        {first(query.refused) !== undefined && (
          <Notice kind="caution">
            <p>{first(query.refused)}</p>
          </Notice>
        )}
      </PageHead>
      <BegunList reader={member.key} words={begunWords()} />
      <Section id="drafts" title={t('begin.drafts')}>
        {drafts.length === 0 ? (
          <p>{t('begin.none')}</p>
        ) : (
          <ul className="index">
            {drafts.map((draft) => (
              <li key={draft.id}>
                <Line draft={draft} />
              </li>
            ))}
          </ul>
        )}
        {next !== null && (
          <p>
            <a href={addressWith('/write', { after: next })}>{t('begin.more')}</a>
          </p>
        )}
      </Section>
      <KindsList />
    </>
  )
}

function Line({ draft }: { draft: DraftLine }) {
  const { id, kind, title, slug, basedOn, held, savedAt, sent } = draft
  return (
    <div>
      <h3 className="index-title">
        <a href={`/write/${id}`}>
          {t('form.kindOf', { kind: labelOf('kinds', kind), title: title ?? t('form.untitled') })}
        </a>
      </h3>
      <p className="facts-line">
        {slug !== null && basedOn !== null && (
          <span>{t('form.revising', { slug, number: String(basedOn) })}</span>
        )}
        {sent === null ? (
          <span>{t('begin.savedAt', { at: formatTime(savedAt) })}</span>
        ) : (
          <span>
            {t('begin.sent', {
              slug: sent.slug,
              number: String(sent.number),
              state: t(`state.${sent.state}`),
            })}
          </span>
        )}
        {held && <a href={`/write/${id}/both`}>{t('begin.held')}</a>}
      </p>
    </div>
  )
}
