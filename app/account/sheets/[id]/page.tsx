import type { Metadata } from 'next'
import { speaking } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import { withdrawnEntry } from '#lib/db/entries.ts'
import { ownKeptSheet } from '#lib/db/kept-sheets.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { currentActor, enter } from '../../../_http/actor.ts'
import { Frozen, MadeFrom } from '../../../_kept/frozen.tsx'
import { KeptNotices } from '../../../_kept/notices.tsx'
import { Today } from '../../../_kept/today.tsx'
import { workSheet } from '../../../_kept/worked-sheet.ts'
import { Cautions } from '../../../_ui/cautions.tsx'
import { NOT_HERE, NotHere } from '../../../_ui/not-here.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { first, type Query } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { splitLanguage } from '../../../_words/language.ts'
import { calculationNamed } from '../../../work-out/calculations.ts'
import { OwnForms } from './own-forms.tsx'

const t = words('kept')

interface Props {
  params: Promise<{ id: string }>
  searchParams: Promise<Query>
}

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  const actor = await currentActor()
  const kept = actor.kind === 'member' ? await ownKeptSheet(actor.key, (await params).id) : null
  return kept === null ? NOT_HERE : { title: kept.name, robots: { index: false } }
}

/** A kept sheet as it was kept, and what would differ today. */
export default async function KeptSheetPage({ params, searchParams }: Props) {
  const { id } = await params
  const member = await enter('/account/sheets/[id]', `/account/sheets/${id}`)
  if (member === null) return <NotYours />
  const kept = await ownKeptSheet(member.key, id)
  if (kept === null) return <NotHere lead={t('gone')} />
  // It stands as it printed, and is set against today in the language that it was kept in.
  const { language } = splitLanguage(kept.address)
  const open = first((await searchParams).working) === 'open'
  const slug = kept.recipe?.slug
  const [withdrawn, recipe, working] = await Promise.all([
    slug === undefined ? null : withdrawnEntry(slug),
    slug === undefined ? null : recipeBySlug(slug),
    speaking(language, () => workSheet(kept.address, { latest: true })),
  ])
  const { cautions = [] } = calculationNamed(kept.calculation) ?? {}
  return (
    <>
      <PageHead title={kept.name} kicker={<a href="/account/sheets">{t('title')}</a>}>
        <KeptNotices kept={kept} withdrawn={withdrawn} recipe={recipe} />
      </PageHead>
      <Cautions cautions={cautions.flatMap((one) => content().cautions.get(one) ?? [])} />
      <Section id="made" title={t('one.made')}>
        <MadeFrom kept={kept} />
      </Section>
      <Section id="figures" title={t('one.figures')} note={formatDate(kept.createdAt)}>
        <Frozen kept={kept} language={language} open={open} />
      </Section>
      <Today kept={kept} working={working} language={language} />
      <div className="screen-only">
        <OwnForms kept={kept} />
      </div>
    </>
  )
}
