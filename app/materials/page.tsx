import { groups } from 'd3-array'
import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import type { Material } from '#lib/content/types.ts'
import { listLibrary } from '#lib/db/library.ts'
import { ROLES } from '#lib/entry/terms.ts'
import { AddedSection } from '../_ui/added-section.tsx'
import { alternates } from '../_ui/alternates.ts'
import { inEnglish } from '../_ui/as-written.ts'
import { labelOf } from '../_ui/label.ts'
import { NamesElsewhere } from '../_ui/names-elsewhere.tsx'
import { backToStart } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { StandingMark } from '../_ui/standing-mark.tsx'
import { Name } from '../_ui/term-name.tsx'
import { words } from '../_words/index.ts'
import { rowsWith } from './use.ts'

const t = words('library')

export const generateMetadata = (): Metadata => ({
  title: t('materials.title'),
  alternates: alternates('/materials'),
})

/** Every material by what it does in a mix. */
export default async function MaterialsPage({ searchParams }: { searchParams: Promise<Query> }) {
  const { materials } = content()
  const byRole = groups([...materials.values()], ({ role }) => role).sort(
    ([a], [b]) => ROLES.indexOf(a) - ROLES.indexOf(b),
  )
  const { entries, next } = await listLibrary('material', { after: first((await searchParams).after) }).catch(
    backToStart('/materials'),
  )
  return (
    <>
      <PageHead title={t('materials.title')} lead={t('materials.lead', { count: materials.size })} />
      {byRole.map(([role, list]) => (
        <Section key={role} id={role} title={labelOf('roles', role)}>
          <ul className="index">
            {list.map((material) => (
              <MaterialLine key={material.id} material={material} />
            ))}
          </ul>
        </Section>
      ))}
      <AddedSection kind="material" entries={entries} next={next} />
    </>
  )
}

const MaterialLine = ({ material: { id, label, description, names, standing } }: { material: Material }) => (
  <li>
    <div>
      <h3 className="index-title">
        <a href={`/materials/${id}`}>
          <Name label={label} labels={names} />
        </a>
      </h3>
      <p {...inEnglish()}>{description}</p>
      <NamesElsewhere english={[label]} names={names} />
    </div>
    <p className="index-side">
      {standing !== 'in-use' && (
        <>
          <StandingMark standing={standing} />
          <br />
        </>
      )}
      {t('materials.rows', { count: rowsWith(id).length })}
    </p>
  </li>
)
