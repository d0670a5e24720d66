import { content } from '#lib/content/index.ts'
import { revisionNames } from '#lib/db/revisions.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { inEnglish } from '../../_ui/as-written.ts'
import { Facts } from '../../_ui/facts.tsx'
import { proportionText } from '../../_ui/ingredients.tsx'
import { labelList, labelOf } from '../../_ui/label.ts'
import { RevisionLink } from '../../_ui/revision-link.tsx'
import { Section } from '../../_ui/section.tsx'
import { SourceMark } from '../../_ui/source-mark.tsx'
import { Written } from '../../_ui/written.tsx'
import { words } from '../../_words/index.ts'

/** The rows a recipe follows, its sources, and its place in time and trade, each kept apart. */
export async function RestsOn({ body }: { body: RecipeBody }) {
  const t = words('pages')
  const { region, adaptedFrom } = body
  const names = await revisionNames(adaptedFrom === undefined ? [] : [adaptedFrom])
  const place = [region.name, region.country && labelOf('countries', region.country)].filter(
    (one) => one !== undefined,
  )
  return (
    <Section id="rests-on" title={t('recipe.restsOn')} note={t('recipe.restsOnNote')}>
      {body.follows.length === 0 && body.sources.length === 0 && <p>{t('recipe.noSource')}</p>}
      {body.follows.length > 0 && (
        <ul className="plain-list stack">
          {body.follows.map((ref) => (
            <FollowedRow key={ref} address={ref} />
          ))}
        </ul>
      )}
      {body.sources.length > 0 && (
        <ul>
          {body.sources.map(({ source, locator }) => (
            <li key={`${source}-${locator ?? ''}`}>
              <SourceMark source={source} {...(locator !== undefined && { locator })} written />
            </li>
          ))}
        </ul>
      )}
      <Facts
        facts={{
          [t('recipe.historicTerm')]: body.historicTerm && <Written>{body.historicTerm}</Written>,
          [t('recipe.chemistry')]: body.chemistry && <Written>{body.chemistry}</Written>,
          [t('recipe.modernClass')]: body.modernClass && <Written>{body.modernClass}</Written>,
          [t('recipe.units')]: body.units.length > 0 ? labelList('units', body.units) : null,
          [t('recipe.region')]: place.length > 0 ? place.join(', ') : null,
          [t('recipe.period')]: body.period && <Written>{body.period}</Written>,
          [t('recipe.adaptedFrom')]: adaptedFrom && (
            <RevisionLink address={adaptedFrom} title={names.get(adaptedFrom)?.title} />
          ),
        }}
      />
    </Section>
  )
}

function FollowedRow({ address }: { address: string }) {
  const row = content().rows.get(address)
  if (!row) return <li>{address}</li>
  return (
    <li>
      <a href={`/tables/${row.ref}`} {...inEnglish()}>
        {row.label}
      </a>
      <span className="block">{proportionText(row.ingredients)}</span>
      <SourceMark source={row.citation.source} locator={row.citation.locator} basis={row.basis} />
    </li>
  )
}
