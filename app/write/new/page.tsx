import type { Metadata } from 'next'
import { v7 } from 'uuid'
import type { WrittenKind } from '#lib/entry/body.ts'
import { enter } from '../../_http/actor.ts'
import { NotYours } from '../../_ui/not-yours.tsx'
import { Notice } from '../../_ui/notice.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../../_ui/query.ts'
import type write from '../../_words/en/write.json'
import { words } from '../../_words/index.ts'
import { KindsList } from '../../_write/kinds-list.tsx'
import { returnedOf } from '../../_write/returned.ts'
import { ReturnedNotice } from '../../_write/returned-notice.tsx'
import { beginWriting } from '../actions.ts'
import { type Asked, askedFrom, givenOf, isKind, type Start, startOf } from '../begin-from.ts'
import '../../_write/write.css'
import { BeginAway } from './begin-away.tsx'

const t = words('write')

export const generateMetadata = (): Metadata => ({ title: t('begin.title'), robots: { index: false } })

/**
 * Says what is about to be begun, and begins it on one press: an address alone never writes anything. Where it names
 * nothing to begin from, there is the list to choose from.
 */
export default async function NewPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const asked = askedFrom((name) => first(query[name]))
  const member = await enter('/write/new', addressWith('/write/new', { ...asked }))
  if (!member) return <NotYours />
  const start = await startOf(member, asked)
  const refusal = first(query.refused)
  const returned = start === null ? null : await returnedOf(start.kind, start.slug, start.basedOn)
  const kind = start?.kind ?? (isKind(asked.kind) ? asked.kind : undefined)
  return (
    <>
      <PageHead
        {...toldOf(start, asked, returned !== null, kind)}
        kicker={<a href="/write">{t('begin.drafts')}</a>}
      >
        {returned !== null && <ReturnedNotice returned={returned} draft={null} />}
        {refusal !== undefined && (
          <Notice kind="caution">
            <p>{refusal}</p>
          </Notice>
        )}
        {start !== null && (
          <form action={beginWriting} className="write-begin">
            <p>{t('begin.lead')}</p>
            {Object.entries({ ...asked, key: v7() }).map(([name, value]) => (
              <input key={name} type="hidden" name={name} value={value} />
            ))}
            {asked.late === '' && <BeginAway blank={addressWith('/write/blank', givenOf(asked))} />}
            <button className="button" type="submit">
              {t('begin.start')}
            </button>
          </form>
        )}
      </PageHead>
      {start === null && <KindsList />}
    </>
  )
}

interface Told {
  readonly title: string
  readonly lead: string
}

/** What will be made, in the head of the page, and what of it changes nothing that stands. */
function toldOf(start: Start | null, asked: Asked, cameBack: boolean, kind: WrittenKind | undefined): Told {
  if (start === null)
    return {
      title: kind ? t(`begin.kind.${kind}`) : t('begin.title'),
      lead: t(kind ? 'begin.noStart' : 'begin.notKind'),
    }
  const { title, basedOn, adaptedFrom } = start
  const from = (ref: string) => ({ title, number: ref.split('@')[1] ?? '' })
  if (asked.back !== '') return told('back', from(asked.back))
  if (basedOn !== null) return told(cameBack ? 'correct' : 'further', { title, number: String(basedOn) })
  if (adaptedFrom !== null) return told('adapt', from(adaptedFrom))
  if (asked.of !== '') return told('visit', { title, number: '' })
  return { title: t(`begin.kind.${start.kind}`), lead: t(`begin.about.${start.kind}`) }
}

const told = (what: keyof typeof write.making, values: { title: string; number: string }): Told => ({
  title: t(`making.${what}.title`, values),
  lead: t(`making.${what}.lead`, values),
})
