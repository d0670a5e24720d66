import { materialOf } from '#lib/content/added.ts'
import type { Published } from '#lib/db/published.ts'
import { recipesWith } from '#lib/db/recipes.ts'
import type { MaterialBody } from '#lib/entry/material.ts'
import { WorkedOnSection } from '../../_kept/worked-on.tsx'
import { AddedHead } from '../../_ui/added-head.tsx'
import { asWritten } from '../../_ui/as-written.ts'
import { Cautions, cautionsFor } from '../../_ui/cautions.tsx'
import { CiteSection } from '../../_ui/cite.tsx'
import { DataTable } from '../../_ui/data-table.tsx'
import { Facts } from '../../_ui/facts.tsx'
import { InventedMark } from '../../_ui/invented.tsx'
import { labelOf, materialLabel } from '../../_ui/label.ts'
import { LaboratorySection } from '../../_ui/laboratory.tsx'
import { Quantity } from '../../_ui/quantity.tsx'
import { Section } from '../../_ui/section.tsx'
import { StandingMark } from '../../_ui/standing-mark.tsx'
import { Written, WrittenIn } from '../../_ui/written.tsx'
import { words } from '../../_words/index.ts'
import { PropertyTable } from './properties.tsx'

const added = words('added')
const t = words('library')

/** A material that a contributor added: its figures and grading, and what it is a kind of. */
export async function AddedMaterial({ entry }: { entry: Published<MaterialBody> }) {
  const { body, slug } = entry
  const recipes = await recipesWith(slug)
  const material = materialOf(slug, body)
  const place = [body.region.name, body.region.country && labelOf('countries', body.region.country)]
  const kin = body.like === undefined ? [] : [{ material: body.like }]
  return (
    <>
      <AddedHead
        title={body.title}
        kicker={<a href="/materials">{t('materials.title')}</a>}
        lead={<Written>{body.summary}</Written>}
        path="materials"
        entry={entry}
        invented={body.invented}
      >
        <Cautions cautions={cautionsFor({ materials: kin, roles: [body.role] })} />
      </AddedHead>
      <Section id="figures" title={t('material.figures')} note={t('material.figuresNote')}>
        <PropertyTable
          caption={<WrittenIn say={(name) => t('material.caption', { name })}>{body.title}</WrittenIn>}
          properties={material.properties}
          written
        />
        {body.sieve !== undefined && body.sieve.length > 0 && <Grading points={body.sieve} />}
      </Section>
      <LaboratorySection results={body.laboratory} />
      <WorkedOnSection sheets={(body.sheets ?? []).map((copy) => ({ copy }))} />
      <Section id="names" title={t('material.about')}>
        <Facts
          facts={{
            [t('material.role')]: labelOf('roles', body.role),
            [added('materials.like')]: body.like && (
              <a href={`/materials/${body.like}`}>{materialLabel(body.like)}</a>
            ),
            [added('materials.region')]: place.filter(Boolean).join(', ') || null,
            [t('material.standing')]: (
              <>
                <StandingMark standing={body.standing} />
                {body.standingReason !== undefined && (
                  <span className="note block" {...asWritten()}>
                    {body.standingReason}
                  </span>
                )}
              </>
            ),
            [added('materials.interests')]: body.interests && <Written>{body.interests}</Written>,
          }}
        />
      </Section>
      {recipes.length > 0 && (
        <Section id="used" title={t('material.used')}>
          <p>{t('material.recipes', { count: recipes.length })}</p>
          <ul>
            {recipes.map((recipe) => (
              <li key={recipe.slug}>
                <a href={`/recipes/${recipe.slug}`} {...asWritten()}>
                  {recipe.title}
                </a>{' '}
                {recipe.invented && <InventedMark />}
              </li>
            ))}
          </ul>
        </Section>
      )}
      <CiteSection path="materials" entry={entry} title={body.title} />
    </>
  )
}

/** Share passing each opening, coarsest first. */
const Grading = ({ points }: { points: NonNullable<MaterialBody['sieve']> }) => (
  <DataTable
    label={added('materials.sieve')}
    caption={added('materials.sieve')}
    columns={[
      { key: 'opening', head: added('materials.opening'), number: true },
      { key: 'passing', head: added('materials.passing'), number: true },
    ]}
    rows={[...points]
      .sort((a, b) => b.openingMm - a.openingMm)
      .map(({ openingMm, passingPercent }) => ({
        key: `${openingMm}`,
        cells: {
          opening: <Quantity value={openingMm} unit="mm" />,
          passing: <Quantity value={passingPercent} unit="%" />,
        },
      }))}
  />
)
