import type { Metadata } from 'next'
import { cache } from 'react'
import { caseBySlug } from '#lib/db/cases.ts'
import { photoFacts } from '#lib/db/photos.ts'
import { type RevisionName, revisionNames } from '#lib/db/revisions.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import { currentActor } from '../../_http/actor.ts'
import { WorkedOnSection } from '../../_kept/worked-on.tsx'
import { AbsentEntry, absentEntryHead } from '../../_ui/absent-entry.tsx'
import { alternates } from '../../_ui/alternates.ts'
import { CautionSection, cautionsFor } from '../../_ui/cautions.tsx'
import { CiteSection } from '../../_ui/cite.tsx'
import { DisputedNotice } from '../../_ui/disputed.tsx'
import { Hinted, hinter } from '../../_ui/hint.tsx'
import { InventedNotice } from '../../_ui/invented.tsx'
import { labelOf } from '../../_ui/label.ts'
import { PageHead } from '../../_ui/page-head.tsx'
import { type Query, wholeNumber } from '../../_ui/query.ts'
import { Superseded } from '../../_ui/superseded.tsx'
import { WriteLinks } from '../../_ui/write-links.tsx'
import { formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { besideVisits } from './beside.ts'
import { CasePhotos } from './case-photos.tsx'
import { Fabric, Found } from './fabric.tsx'
import { QualitySection } from './quality.tsx'
import { WorkSection } from './work-section.tsx'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('pages')
/** Head and page ask for the same case: it is read once. */
const readCase = cache(caseBySlug)

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { slug } = await params
  const found = await readCase(slug, wholeNumber((await searchParams).revision))
  if (!found) return absentEntryHead({ kind: 'case', slug })
  const { title, summary } = found.body
  return { title, description: summary, alternates: alternates(`/cases/${slug}`) }
}

/** One wall: its fabric, the mortars found in it, the works done to it and what each visit saw. */
export default async function CasePage({ params, searchParams }: Props) {
  const { slug } = await params
  const revision = wholeNumber((await searchParams).revision)
  const found = await readCase(slug, revision)
  if (!found) return <AbsentEntry kind="case" slug={slug} revision={revision} path={`/cases/${slug}`} />
  const { body, visits } = found
  const [recipes, photos, beside] = await Promise.all([
    revisionNames(body.works.flatMap(({ recipe }) => recipe ?? [])),
    photoFacts(visits.flatMap(({ body }) => (body.photos ?? []).map(({ sha256 }) => sha256))),
    currentActor().then((actor) => besideVisits(actor, found, visits)),
  ])
  return (
    <>
      <PageHead
        title={body.title}
        kicker={<a href="/cases">{t('cases.title')}</a>}
        lead={<Hinted pieces={hinter()(body.summary)} />}
        written
      >
        <p className="facts-line">
          <span>
            {t('cases.place', {
              region: body.place.region,
              country: labelOf('countries', body.place.country),
            })}
          </span>
          <span>{t('case.works', { count: body.works.length })}</span>
          <span>{t('cases.visits', { count: visits.length })}</span>
          <a href={`/like?from=${slug}`}>{words('find')('like.fromCase')}</a>
        </p>
        {body.invented && <InventedNotice page="one" />}
        <Superseded path="cases" entry={found} />
        <DisputedNotice entry={found} />
        <WriteLinks kind="case" slug={slug} />
      </PageHead>
      {body.works.map((work) => (
        <WorkSection
          key={work.id}
          work={work}
          recipeTitle={work.recipe && recipes.get(work.recipe)?.title}
          visits={visits.filter((visit) => visit.body.work === work.id)}
          beside={beside}
        />
      ))}
      <CasePhotos slug={slug} visits={visits} facts={photos} />
      <Fabric body={body} />
      <Found body={body} />
      <WorkedOnSection sheets={sheetsOf(found)} />
      <QualitySection body={body} visits={visits} caseEntryId={found.entryId} />
      <CautionSection cautions={cautionsOf(body, recipes)} />
      <CiteSection path="cases" entry={found} title={body.title} />
    </>
  )
}

/** The sheets that the case and its visits rest on. */
const sheetsOf = ({ body, visits }: NonNullable<Awaited<ReturnType<typeof caseBySlug>>>) => [
  ...(body.sheets ?? []).map((copy) => ({ copy })),
  ...visits.flatMap(({ body: { on, sheets = [] } }) =>
    sheets.map((copy) => ({ copy, from: words('kept')('worked.visit', { on: formatDate(on) }) })),
  ),
]

/** What the works of this case put hands to, as mixed and by the recipes that they name. */
const cautionsOf = ({ works }: CaseBody, recipes: ReadonlyMap<string, RevisionName>) =>
  cautionsFor({
    materials: works.flatMap(({ mixed }) => mixed?.ingredients ?? []),
    uses: works.map(({ use }) => use),
    methods: [...recipes.values()].map(({ method }) => method),
  })
