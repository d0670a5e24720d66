import type { Metadata } from 'next'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { AbsentEntry, absentEntryHead } from '../../../_ui/absent-entry.tsx'
import { changesSince } from '../../../_ui/changes-since.ts'
import { InventedNotice } from '../../../_ui/invented.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { addressWith, type Query, wholeNumber } from '../../../_ui/query.ts'
import { words } from '../../../_words/index.ts'
import { FaultList } from './fault-list.tsx'
import { JobForm } from './job-form.tsx'
import { LiveSheet } from './live-sheet.tsx'
import { asItWouldBeSent } from './read-inputs.ts'
import { Sheet } from './sheet.tsx'
import { StandingNotice } from './standing-notice.tsx'
import { VersionNotice } from './version-notice.tsx'
import { addressOf, isComplete } from './versions.ts'
import { workSheet } from './work-sheet.ts'
import './job.css'
import { redirect } from '../../../_http/redirect.ts'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('job')

/** The script has no catalogue; `{telling}` is filled in there. */
const liveWords = () => ({
  busy: t('live.busy'),
  failed: t('live.failed'),
  done: t('live.done', { telling: '{telling}' }),
})

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { slug } = await params
  const recipe = await recipeBySlug(slug, wholeNumber((await searchParams).r))
  return recipe
    ? { title: t('title', { title: recipe.body.title }), robots: { index: false, follow: true } }
    : absentEntryHead({ kind: 'recipe', slug })
}

/** A recipe turned into a job: the form, and the sheet that it gives. The address holds both. */
export default async function JobPage({ params, searchParams }: Props) {
  const { slug } = await params
  const query = await searchParams
  const path = `/recipes/${slug}/job`
  const worked = await workSheet(slug, query)
  if (!worked) return <AbsentEntry kind="recipe" slug={slug} revision={wholeNumber(query.r)} path={path} />
  const { recipe, inputs, sheet, versions, faults, earlier } = worked
  const { typed } = inputs
  const address = versions && addressOf(path, typed, versions)
  if (address && !inputs.fresh && typed.show === undefined && !isComplete(typed)) redirect(`${address}#sheet`)
  return (
    <>
      <PageHead
        title={t('title', { title: recipe.body.title })}
        kicker={<a href={addressWith(`/recipes/${slug}`, { revision: earlier })}>{t('kicker')}</a>}
        lead={<span className="screen-only">{t('lead')}</span>}
      >
        {recipe.body.invented && <InventedNotice page="one" />}
        <div className="job-notices">
          {versions && address && (
            <VersionNotice
              changes={changesSince(typed, versions)}
              versions={versions}
              latest={recipe.latest}
              today={address}
            />
          )}
          <FaultList faults={faults} />
          {!sheet && <StandingNotice recipe={recipe.body} />}
        </div>
      </PageHead>
      <JobForm action={path} recipe={recipe.body} inputs={inputs} faults={faults} revision={earlier} />
      <LiveSheet words={liveWords()}>
        {sheet && versions && address && (
          <Sheet
            recipe={recipe}
            inputs={inputs}
            sheet={sheet}
            versions={versions}
            address={address}
            fullAddress={addressOf(path, asItWouldBeSent(inputs), versions)}
            working={typed.working === 'open'}
            cardAddress={addressOf(`${path}/card`, asItWouldBeSent(inputs), versions)}
            workingAddress={`${addressOf(path, { ...asItWouldBeSent(inputs), working: 'open' }, versions)}#working`}
          />
        )}
      </LiveSheet>
    </>
  )
}
