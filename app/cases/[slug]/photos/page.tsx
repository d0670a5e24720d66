import type { Metadata } from 'next'
import { cache } from 'react'
import { caseBySlug } from '#lib/db/cases.ts'
import { photoFacts } from '#lib/db/photos.ts'
import { AbsentEntry, absentEntryHead } from '../../../_ui/absent-entry.tsx'
import { alternates } from '../../../_ui/alternates.ts'
import { asWritten } from '../../../_ui/as-written.ts'
import { InventedNotice } from '../../../_ui/invented.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { spotsOf } from '../../../_ui/photo-spots.ts'
import type { Query } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { words } from '../../../_words/index.ts'
import { Choice } from './choice.tsx'
import { Compared } from './compared.tsx'
import { pairOf } from './pair.ts'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('photos')
const readCase = cache(caseBySlug)

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { slug } = await params
  const found = await readCase(slug)
  if (!found) return absentEntryHead({ kind: 'case', slug })
  return {
    title: t('compare.title', { title: found.body.title }),
    alternates: alternates(`/cases/${slug}/photos`),
  }
}

/** One spot of a wall on two days: beside one another, and one over the other. */
export default async function ComparePhotosPage({ params, searchParams }: Props) {
  const { slug } = await params
  const found = await readCase(slug)
  if (!found) return <AbsentEntry kind="case" slug={slug} revision={undefined} path={`/cases/${slug}`} />
  const spots = spotsOf(found.visits.map(({ body }) => body))
  const pair = pairOf(spots, await searchParams)
  const facts = await photoFacts(pair === undefined ? [] : [pair.before.sha256, pair.after.sha256])
  return (
    <>
      <PageHead
        title={t('compare.head')}
        kicker={
          <a href={`/cases/${slug}#photos`} {...asWritten()}>
            {found.body.title}
          </a>
        }
        lead={t('compare.about')}
      >
        {found.body.invented && <InventedNotice page="one" />}
      </PageHead>
      {pair === undefined ? (
        <p>{t('compare.none')}</p>
      ) : (
        <>
          <Section id="choice" title={t('compare.choose')}>
            <Choice slug={slug} spots={spots} pair={pair} />
          </Section>
          <Compared pair={pair} facts={facts} />
        </>
      )}
    </>
  )
}
