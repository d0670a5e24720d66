import type { Metadata } from 'next'
import { askedLanguage } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import type { Guide } from '#lib/content/types.ts'
import { alternates } from '../../_ui/alternates.ts'
import { Cautions } from '../../_ui/cautions.tsx'
import { guideWords } from '../../_ui/guide-words.ts'
import { hinter } from '../../_ui/hint.tsx'
import { NOT_HERE, NotHere } from '../../_ui/not-here.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { Section } from '../../_ui/section.tsx'
import { SourceList } from '../../_ui/source-mark.tsx'
import { words } from '../../_words/index.ts'
import { GuideBlocks, sectionsOf } from './blocks.tsx'

interface Props {
  params: Promise<{ id: string }>
}

const t = words('library')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const guide = content().guides.get((await params).id)
  return guide ? { title: guideWords(guide).title, alternates: alternates(`/guides/${guide.id}`) } : NOT_HERE
}

/** One guide: its cautions first, then what to do, then what it rests on. */
export default async function GuidePage({ params }: Props) {
  const { guides, cautions } = content()
  const guide = guides.get((await params).id)
  if (!guide) return <NotHere />
  const { title, summary, blocks } = guideWords(guide)
  const { opening, sections } = sectionsOf(blocks, hinter(askedLanguage()))
  return (
    <>
      <PageHead title={title} kicker={<a href="/guides">{t('guides.title')}</a>} lead={summary}>
        <Cautions cautions={guide.cautions.flatMap((id) => cautions.get(id) ?? [])} />
        <div className="prose guide-opening">
          <GuideBlocks blocks={opening} />
        </div>
      </PageHead>
      {sections.map(({ id, title, blocks }) => (
        <Section key={id} id={id} title={title}>
          <GuideBlocks blocks={blocks} />
        </Section>
      ))}
      {guide.sources.length > 0 && (
        <Section id="sources" title={t('guide.sources')}>
          <SourceList sources={guide.sources} />
        </Section>
      )}
      <Neighbours guide={guide} />
    </>
  )
}

/** The guides before and after this one. */
function Neighbours({ guide }: { guide: Guide }) {
  const all = [...content().guides.values()]
  const at = all.indexOf(guide)
  const [before, after] = [all[at - 1], all[at + 1]]
  return (
    <nav className="actions" aria-label={t('guide.others')}>
      {before && (
        <a className="touch" href={`/guides/${before.id}`}>
          {t('guide.before', { title: guideWords(before).title })}
        </a>
      )}
      {after && (
        <a className="touch" href={`/guides/${after.id}`}>
          {t('guide.after', { title: guideWords(after).title })}
        </a>
      )}
    </nav>
  )
}
