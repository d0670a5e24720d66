import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { recipesWith } from '#lib/db/recipes.ts'
import { Cautions, cautionsFor } from '../../_ui/cautions.tsx'
import { Facts } from '../../_ui/facts.tsx'
import { Hinted, hinter } from '../../_ui/hint.tsx'
import { InventedMark } from '../../_ui/invented.tsx'
import { labelOf } from '../../_ui/label.ts'
import { lackingIn, NamesElsewhere } from '../../_ui/names-elsewhere.tsx'
import { NOT_HERE, NotHere } from '../../_ui/not-here.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { Section } from '../../_ui/section.tsx'
import { StandingMark } from '../../_ui/standing-mark.tsx'
import { words } from '../../_words/index.ts'
import { rowsWith } from '../use.ts'
import { PropertyTable } from './properties.tsx'

interface Props {
  params: Promise<{ id: string }>
}

const t = words('library')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const material = content().materials.get((await params).id)
  return material
    ? { title: material.label, alternates: { canonical: `/materials/${material.id}` } }
    : NOT_HERE
}

/** One material: its figures, its cautions, its names, and what it is used in. */
export default async function MaterialPage({ params }: Props) {
  const material = content().materials.get((await params).id)
  if (!material) return <NotHere />
  const { id, label, role, description, names, properties, standing, standingReason } = material
  const [rows, recipes] = [rowsWith(id), await recipesWith(id)]
  const lacking = lackingIn(names)
  return (
    <>
      <PageHead
        title={label}
        kicker={<a href="/materials">{t('materials.title')}</a>}
        lead={<Hinted pieces={hinter()(description)} />}
      >
        <Cautions cautions={cautionsFor({ materials: [{ material: id }], roles: [role] })} />
      </PageHead>
      <Section id="figures" title={t('material.figures')} note={t('material.figuresNote')}>
        <PropertyTable label={label} properties={properties} />
      </Section>
      <Section id="names" title={t('material.about')}>
        <Facts
          facts={{
            [t('material.role')]: labelOf('roles', role),
            [t('material.standing')]: (
              <>
                <StandingMark standing={standing} />
                {standingReason !== undefined && <span className="note block">{standingReason}</span>}
              </>
            ),
            [t('material.names')]: (
              <>
                <NamesElsewhere names={names} />
                {lacking !== undefined && <p className="note">{t('term.lacking', { languages: lacking })}</p>}
              </>
            ),
          }}
        />
      </Section>
      <Section id="used" title={t('material.used')}>
        <p>{t('material.rows', { count: rows.length })}</p>
        {rows.length > 0 && (
          <ul>
            {rows.map((row) => (
              <li key={row.ref}>
                <a href={`/tables/${row.ref}`}>{row.label}</a>, {row.region}, {row.period}
              </li>
            ))}
          </ul>
        )}
        <p>{t('material.recipes', { count: recipes.length })}</p>
        {recipes.length > 0 && (
          <ul>
            {recipes.map(({ slug, title, invented }) => (
              <li key={slug}>
                <a href={`/recipes/${slug}`}>{title}</a> {invented && <InventedMark />}
              </li>
            ))}
          </ul>
        )}
      </Section>
    </>
  )
}
