import { groups } from 'd3-array'
import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import type { Material } from '#lib/content/types.ts'
import { ROLES } from '#lib/entry/terms.ts'
import { labelOf } from '../_ui/label.ts'
import { NamesElsewhere } from '../_ui/names-elsewhere.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { Section } from '../_ui/section.tsx'
import { StandingMark } from '../_ui/standing-mark.tsx'
import { words } from '../_words/index.ts'
import { rowsWith } from './use.ts'

const t = words('library')

export const metadata: Metadata = { title: t('materials.title'), alternates: { canonical: '/materials' } }

/** Every material by what it does in a mix. */
export default function MaterialsPage() {
  const { materials } = content()
  const byRole = groups([...materials.values()], ({ role }) => role).sort(
    ([a], [b]) => ROLES.indexOf(a) - ROLES.indexOf(b),
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
    </>
  )
}

const MaterialLine = ({ material: { id, label, description, names, standing } }: { material: Material }) => (
  <li>
    <div>
      <h3 className="index-title">
        <a href={`/materials/${id}`}>{label}</a>
      </h3>
      <p>{description}</p>
      <NamesElsewhere names={names} />
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
