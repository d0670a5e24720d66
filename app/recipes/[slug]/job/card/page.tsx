import type { Metadata } from 'next'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { AbsentEntry, absentEntryHead } from '../../../../_ui/absent-entry.tsx'
import { changesSince } from '../../../../_ui/changes-since.ts'
import { InventedNotice } from '../../../../_ui/invented.tsx'
import { PageHead } from '../../../../_ui/page-head.tsx'
import { addressWith, type Query, wholeNumber } from '../../../../_ui/query.ts'
import { words } from '../../../../_words/index.ts'
import { FaultList } from '../fault-list.tsx'
import { asItWouldBeSent } from '../read-inputs.ts'
import { VersionNotice } from '../version-notice.tsx'
import { addressOf } from '../versions.ts'
import { workSheet } from '../work-sheet.ts'
import { BatchCard } from './batch-card.tsx'
import { CardForm } from './card-form.tsx'
import '../job.css'
import './card.css'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('job')

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { slug } = await params
  const recipe = await recipeBySlug(slug, wholeNumber((await searchParams).r))
  return recipe
    ? { title: t('card.title', { title: recipe.body.title }), robots: { index: false, follow: true } }
    : absentEntryHead({ kind: 'recipe', slug })
}

/** One load of a job on a card for the mixer. Its address is that of the sheet, and its figures are the same. */
export default async function BatchCardPage({ params, searchParams }: Props) {
  const { slug } = await params
  const query = await searchParams
  const path = `/recipes/${slug}/job/card`
  const worked = await workSheet(slug, query)
  if (!worked) return <AbsentEntry kind="recipe" slug={slug} revision={wholeNumber(query.r)} path={path} />
  const { recipe, inputs, sheet, versions, faults, earlier } = worked
  const sent = asItWouldBeSent(inputs)
  const { r: _, ed: __, sums: ___, is: ____, ...asked } = sent
  const back = addressWith(`/recipes/${slug}/job`, { ...asked, r: earlier })
  return (
    <>
      <PageHead
        title={t('card.title', { title: recipe.body.title })}
        kicker={<a href={`${back}#sheet`}>{t('card.back')}</a>}
        lead={t('card.lead')}
      >
        {recipe.body.invented && <InventedNotice page="one" />}
        {versions && (
          <VersionNotice
            changes={changesSince(inputs.typed, versions)}
            versions={versions}
            latest={recipe.latest}
            today={addressOf(path, sent, versions)}
          />
        )}
        <FaultList faults={faults} />
      </PageHead>
      <CardForm action={path} inputs={inputs} asked={asked} faults={faults} revision={earlier} />
      {sheet && versions && <BatchCard recipe={recipe} inputs={inputs} sheet={sheet} versions={versions} />}
    </>
  )
}
