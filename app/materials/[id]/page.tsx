import type { Metadata } from 'next'
import { cache } from 'react'
import { content } from '#lib/content/index.ts'
import { listLibrary } from '#lib/db/library.ts'
import { publishedBySlug } from '#lib/db/published.ts'
import { recipesWith } from '#lib/db/recipes.ts'
import { AbsentEntry, absentEntryHead } from '../../_ui/absent-entry.tsx'
import { AddedList } from '../../_ui/added-list.tsx'
import { alternates } from '../../_ui/alternates.ts'
import { asWritten, inEnglish } from '../../_ui/as-written.ts'
import { Cautions, cautionsFor } from '../../_ui/cautions.tsx'
import { Facts } from '../../_ui/facts.tsx'
import { Hinted, hinter } from '../../_ui/hint.tsx'
import { InventedMark } from '../../_ui/invented.tsx'
import { labelOf, materialLabel } from '../../_ui/label.ts'
import { lackingIn, NamesElsewhere } from '../../_ui/names-elsewhere.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { type Query, wholeNumber } from '../../_ui/query.ts'
import { Section } from '../../_ui/section.tsx'
import { StandingMark } from '../../_ui/standing-mark.tsx'
import { Name, NameIn } from '../../_ui/term-name.tsx'
import { English } from '../../_ui/written.tsx'
import { words } from '../../_words/index.ts'
import { rowsWith } from '../use.ts'
import { AddedMaterial } from './added-material.tsx'
import { PropertyTable } from './properties.tsx'

interface Props {
  params: Promise<{ id: string }>
  searchParams: Promise<Query>
}

const t = words('library')

const readMaterial = cache((slug: string, revision: number | undefined) =>
  publishedBySlug('material', slug, revision ?? null),
)

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { id } = await params
  const revision = wholeNumber((await searchParams).revision)
  const own = revision === undefined ? content().materials.get(id) : undefined
  const title = (own && materialLabel(own.id)) ?? (await readMaterial(id, revision))?.body.title
  if (title === undefined) return absentEntryHead({ kind: 'material', slug: id })
  return { title, alternates: alternates(`/materials/${id}`) }
}

/**
 * One material: its figures, its cautions, its names, and what it is used in. A material of content stands
 * before an entry of the same id, whose revisions stay readable by their numbers.
 */
export default async function MaterialPage({ params, searchParams }: Props) {
  const asked = (await params).id
  const revision = wholeNumber((await searchParams).revision)
  const material = revision === undefined ? content().materials.get(asked) : undefined
  if (!material) {
    const entry = await readMaterial(asked, revision)
    if (entry) return <AddedMaterial entry={entry} />
    return <AbsentEntry kind="material" slug={asked} revision={revision} path={`/materials/${asked}`} />
  }
  const { id, role, description, names, properties, standing, standingReason } = material
  const rows = rowsWith(id)
  const [recipes, kinds] = await Promise.all([recipesWith(id), listLibrary('material', { like: id })])
  const lacking = lackingIn(names)
  return (
    <>
      <PageHead
        title={<Name label={material.label} labels={names} />}
        kicker={<a href="/materials">{t('materials.title')}</a>}
        lead={
          <English>
            <Hinted pieces={hinter()(description)} />
          </English>
        }
      >
        <Cautions cautions={cautionsFor({ materials: [{ material: id }], roles: [role] })} />
      </PageHead>
      <Section id="figures" title={t('material.figures')} note={t('material.figuresNote')}>
        <PropertyTable
          caption={
            <NameIn say={(name) => t('material.caption', { name })} label={material.label} labels={names} />
          }
          properties={properties}
        />
      </Section>
      <Section id="names" title={t('material.about')}>
        <Facts
          facts={{
            [t('material.role')]: labelOf('roles', role),
            [t('material.standing')]: (
              <>
                <StandingMark standing={standing} />
                {standingReason !== undefined && (
                  <span className="note block" {...inEnglish()}>
                    {standingReason}
                  </span>
                )}
              </>
            ),
            [t('material.names')]: (
              <>
                <NamesElsewhere english={[material.label]} names={names} />
                {lacking !== undefined && <p className="note">{t('term.lacking', { languages: lacking })}</p>}
              </>
            ),
          }}
        />
      </Section>
      {kinds.entries.length > 0 && (
        <Section id="kinds" title={words('added')('materials.kinds')}>
          <AddedList entries={kinds.entries} />
        </Section>
      )}
      <Section id="used" title={t('material.used')}>
        <p>{t('material.rows', { count: rows.length })}</p>
        {rows.length > 0 && (
          <ul>
            {rows.map((row) => (
              <li key={row.ref}>
                <English>
                  <a href={`/tables/${row.ref}`}>{row.label}</a>, {row.region}, {row.period}
                </English>
              </li>
            ))}
          </ul>
        )}
        <p>{t('material.recipes', { count: recipes.length })}</p>
        {recipes.length > 0 && (
          <ul>
            {recipes.map(({ slug, title, invented }) => (
              <li key={slug}>
                <a href={`/recipes/${slug}`} {...asWritten()}>
                  {title}
                </a>{' '}
                {invented && <InventedMark />}
              </li>
            ))}
          </ul>
        )}
      </Section>
    </>
  )
}
