import type { Metadata } from 'next'
import { cache } from 'react'
import { listCases } from '#lib/db/cases.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { WorkedOnSection } from '../../_kept/worked-on.tsx'
import { AbsentEntry, absentEntryHead } from '../../_ui/absent-entry.tsx'
import { alternates } from '../../_ui/alternates.ts'
import { asWritten } from '../../_ui/as-written.ts'
import { CaseIndex } from '../../_ui/case-index.tsx'
import { Cautions, cautionsFor } from '../../_ui/cautions.tsx'
import { CiteSection } from '../../_ui/cite.tsx'
import { MixDrawn } from '../../_ui/drawings/mix-drawn.tsx'
import { EvidenceLink } from '../../_ui/evidence-link.tsx'
import { Hinted, hinter } from '../../_ui/hint.tsx'
import { labelOf } from '../../_ui/label.ts'
import { LaboratorySection } from '../../_ui/laboratory.tsx'
import { addressWith, type Query, wholeNumber } from '../../_ui/query.ts'
import { Section } from '../../_ui/section.tsx'
import { StateProportionsTable } from '../../_ui/state-proportions.tsx'
import { workedProportions } from '../../_ui/worked.ts'
import { WorkedNote } from '../../_ui/worked-note.tsx'
import { words } from '../../_words/index.ts'
import { IngredientTable } from './ingredient-table.tsx'
import { RecipeHead } from './recipe-head.tsx'
import { RestsOn } from './rests-on.tsx'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('pages')
/** Head and page ask for the same recipe: it is read once. */
const readRecipe = cache(recipeBySlug)
/** More than these are a list of their own. */
const MOST_CASES = 12

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { slug } = await params
  const recipe = await readRecipe(slug, wholeNumber((await searchParams).revision))
  if (!recipe) return absentEntryHead({ kind: 'recipe', slug })
  const { title, summary } = recipe.body
  return { title, description: summary, alternates: alternates(`/recipes/${slug}`) }
}

/** One recipe: as stated, as it works out for each lime state, what it rests on, where it was used. */
export default async function RecipePage({ params, searchParams }: Props) {
  const { slug } = await params
  const revision = wholeNumber((await searchParams).revision)
  const recipe = await readRecipe(slug, revision)
  if (!recipe) return <AbsentEntry kind="recipe" slug={slug} revision={revision} path={`/recipes/${slug}`} />
  const { body } = recipe
  const { cases, total } = await listCases({ recipe: [slug] }, { limit: MOST_CASES })
  const worked = workedProportions(body.ingredients)
  const hint = hinter()
  const cautions = cautionsFor({
    materials: body.ingredients,
    roles: body.ingredients.map(({ role }) => role),
    uses: body.uses,
    methods: [body.method],
  })
  return (
    <>
      <RecipeHead recipe={recipe} />
      <Section id="stated" title={t('recipe.stated')} note={t('recipe.statedNote')}>
        <IngredientTable ingredients={body.ingredients} />
      </Section>
      <Section id="worked" title={t('worked.title')} note={<WorkedNote of="worked.note" />}>
        {worked.ok ? (
          <>
            <StateProportionsTable proportions={worked.value} ingredients={body.ingredients} />
            <MixDrawn proportions={worked.value} ingredients={body.ingredients} />
          </>
        ) : (
          <p>{t('worked.refused')}</p>
        )}
      </Section>
      <Section id="method" title={t('recipe.method')}>
        <p>
          <strong>{labelOf('methods', body.method)}.</strong>
        </p>
        {body.methodNotes?.split(/\n\s*\n/).map((paragraph) => (
          <p key={paragraph} {...asWritten()}>
            <Hinted pieces={hint(paragraph)} />
          </p>
        ))}
        <Cautions cautions={cautions} />
      </Section>
      <RestsOn body={body} />
      <WorkedOnSection sheets={(body.sheets ?? []).map((copy) => ({ copy }))} />
      <LaboratorySection results={body.laboratory} units={body.units} />
      <Section id="cases" title={t('recipe.cases')} note={t('recipe.casesNote')}>
        {cases.length === 0 ? <p>{t('recipe.noCases')}</p> : <CaseIndex cases={cases} head="h3" />}
        {total > cases.length && (
          <p>
            <a href={addressWith('/cases', { recipe: slug })}>{t('recipe.allCases', { count: total })}</a>
          </p>
        )}
        {total > 0 && (
          <>
            <EvidenceLink choices={{ recipe: slug }} />
            <EvidenceLink choices={{ family: body.family }} of="family" />
          </>
        )}
      </Section>
      <CiteSection path="recipes" entry={recipe} title={body.title} />
    </>
  )
}
