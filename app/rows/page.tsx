import type { Metadata } from 'next'
import { listLibrary } from '#lib/db/library.ts'
import { AddedList } from '../_ui/added-list.tsx'
import { alternates } from '../_ui/alternates.ts'
import { InventedNotice } from '../_ui/invented.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { words } from '../_words/index.ts'

const t = words('added')

export const generateMetadata = (): Metadata => ({ title: t('row.title'), alternates: alternates('/rows') })

/** Proportions proposed for the tables that two reviewers have published. */
export default async function RowsPage({ searchParams }: { searchParams: Promise<Query> }) {
  const after = first((await searchParams).after)
  const { entries, next } = await listLibrary('row', { after }).catch(backToStart('/rows'))
  return (
    <>
      <PageHead
        title={t('row.title')}
        kicker={<a href="/tables">{words('pages')('tables.title')}</a>}
        lead={t('row.lead')}
      />
      {entries.some(({ invented }) => invented) && <InventedNotice page="list" />}
      {entries.length === 0 ? <p>{t('row.none')}</p> : <AddedList entries={entries} />}
      <NextPage path="/rows" choices={{}} after={after} next={next} />
    </>
  )
}
