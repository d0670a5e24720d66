import type { Metadata } from 'next'
import { cache } from 'react'
import { rowIngredientsOf } from '#lib/content/added.ts'
import { content } from '#lib/content/index.ts'
import { materialsIn, readMaterials } from '#lib/db/materials.ts'
import { publishedBySlug } from '#lib/db/published.ts'
import { AbsentEntry, absentEntryHead } from '../../_ui/absent-entry.tsx'
import { AddedHead } from '../../_ui/added-head.tsx'
import { alternates } from '../../_ui/alternates.ts'
import { asWritten, inEnglish } from '../../_ui/as-written.ts'
import { Cautions, cautionsFor } from '../../_ui/cautions.tsx'
import { CiteSection } from '../../_ui/cite.tsx'
import { Facts } from '../../_ui/facts.tsx'
import { measureText, proportionText } from '../../_ui/ingredients.tsx'
import { labelList } from '../../_ui/label.ts'
import { type Query, wholeNumber } from '../../_ui/query.ts'
import { Section } from '../../_ui/section.tsx'
import { SourceMark } from '../../_ui/source-mark.tsx'
import { StandingMark } from '../../_ui/standing-mark.tsx'
import { StateProportionsTable } from '../../_ui/state-proportions.tsx'
import { workedProportions } from '../../_ui/worked.ts'
import { WorkedNote } from '../../_ui/worked-note.tsx'
import { Written } from '../../_ui/written.tsx'
import { formatYear } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('added')
const readRow = cache((slug: string, revision: number | undefined) =>
  publishedBySlug('row', slug, revision ?? null),
)

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { slug } = await params
  const row = await readRow(slug, wholeNumber((await searchParams).revision))
  if (!row) return absentEntryHead({ kind: 'row', slug })
  return { title: row.body.title, alternates: alternates(`/rows/${slug}`) }
}

/** One proposed row: as its source states it, worked out as the tables' rows are, and what it rests on. */
export default async function RowPage({ params, searchParams }: Props) {
  const { slug } = await params
  const revision = wholeNumber((await searchParams).revision)
  const row = await readRow(slug, revision)
  if (!row) return <AbsentEntry kind="row" slug={slug} revision={revision} path={`/rows/${slug}`} />
  const { body } = row
  await readMaterials(materialsIn(body))
  const ingredients = rowIngredientsOf(body)
  const worked = workedProportions(ingredients)
  const cautions = cautionsFor({
    materials: ingredients.map(({ material }) => ({ material })),
    roles: ingredients.map(({ role }) => role),
    uses: body.uses,
  })
  return (
    <>
      <AddedHead
        title={body.title}
        kicker={<a href="/rows">{t('row.title')}</a>}
        lead={proportionText(ingredients)}
        path="rows"
        entry={row}
        invented={body.invented}
      >
        <Cautions cautions={cautions} />
      </AddedHead>
      <Section id="stated" title={t('row.stated')}>
        <Facts facts={factsOf(body, measureText(ingredients))} />
      </Section>
      {worked.ok && (
        <Section id="worked" title={words('pages')('worked.title')} note={<WorkedNote of="worked.note" />}>
          <StateProportionsTable proportions={worked.value} ingredients={ingredients} />
        </Section>
      )}
      <CiteSection path="rows" entry={row} title={body.title} />
    </>
  )
}

function factsOf(
  body: NonNullable<Awaited<ReturnType<typeof readRow>>>['body'],
  measure: string,
): Record<string, React.ReactNode> {
  const { table, source, from, to } = body
  return {
    [t('row.measured')]: (
      <>
        {measure}. <Written>{body.measured}</Written>
      </>
    ),
    [t('row.uses')]: labelList('uses', body.uses),
    [t('row.source')]: (
      <SourceMark
        source={source.source}
        {...(source.locator !== undefined && { locator: source.locator })}
        basis={body.basis}
        written
      />
    ),
    [t('row.region')]: <Written>{body.region}</Written>,
    [t('row.period')]: <Written>{body.period}</Written>,
    [t('row.years')]: t('row.span', { from: formatYear(from), to: formatYear(to) }),
    [t('row.table')]: table && (
      <a href={`/tables/${table}`} {...inEnglish()}>
        {content().tables.get(table)?.title ?? table}
      </a>
    ),
    [t('row.additions')]: body.additions && <Written>{body.additions}</Written>,
    [t('row.notes')]: body.notes && <Written>{body.notes}</Written>,
    [t('row.ambiguous')]: body.ambiguous && <Written>{body.ambiguous}</Written>,
    [words('library')('material.standing')]: (
      <>
        <StandingMark standing={body.standing} />
        {body.standingReason !== undefined && (
          <span className="note block" {...asWritten()}>
            {body.standingReason}
          </span>
        )}
      </>
    ),
    [t('materials.interests')]: body.interests && <Written>{body.interests}</Written>,
  }
}
