import type { ReactNode } from 'react'
import { content } from '#lib/content/index.ts'
import { likelyDuplicates, visitsOfThatDay } from '#lib/db/duplicates.ts'
import { similarPhotos } from '#lib/db/photo-likeness.ts'
import type { BodyOf, WrittenKind } from '#lib/entry/body.ts'
import { type Finding, findingsOf } from '#lib/entry/bounds.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import { missingBasis } from '#lib/entry/missing-basis.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { quantityText } from '../_ui/quantity.tsx'
import { workedProportions } from '../_ui/worked.ts'
import { fieldName } from '../_versions/field-name.ts'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { compareWithRow } from '../_write/ratio-notes.ts'

const t = words('review')

interface Asked<K extends WrittenKind> {
  readonly kind: K
  readonly body: BodyOf<K>
  readonly entryId: string
  readonly authorKey: string
}

/** Everything about an entry that a machine can point at: worth a look, and no verdict. */
export async function findingsFor(asked: Asked<WrittenKind>): Promise<ReactNode[]> {
  const { kind, body, entryId, authorKey } = asked
  return [
    ...figures(kind, body),
    ...missingBasis(kind, body).map((what) => t(`finding.${what}`)),
    ...(kind === 'recipe' ? ratios(body as RecipeBody) : []),
    ...(kind === 'case' ? await sameWall(entryId, body as CaseBody, authorKey) : []),
    ...(kind === 'visit' ? await visitFindings(entryId, body as VisitBody) : []),
  ]
}

function figures(kind: WrittenKind, body: BodyOf<WrittenKind>): string[] {
  const worked = kind === 'recipe' ? workedProportions((body as RecipeBody).ingredients) : undefined
  return findingsOf(kind, body as never, worked?.ok ? worked.value : undefined).map((finding) =>
    figureText(finding, body),
  )
}

/** `works.0.areaM2` as a path that names the item by its place. */
const pathOfField = (field: string): string[] => field.split('.').filter((part) => !/^\d+$/.test(part))

function figureText({ field, value, low, high, unit, basis, reason }: Finding, body: unknown): string {
  const print = (figure: number) =>
    Number.isFinite(figure) ? quantityText(figure, unit).main : t('finding.open')
  const place = /\.(\d+)\./.exec(field)?.[1]
  const name = fieldName(pathOfField(field), [body])
  return t(reason === undefined ? 'finding.figure' : 'finding.figureReason', {
    field: place === undefined ? name : t('finding.place', { name, number: Number(place) + 1 }),
    value: print(value),
    low: print(low),
    high: print(high),
    basis: words('terms')(`basis.${basis}.label`),
    reason: reason ?? '',
  })
}

const ratios = ({ ingredients, follows }: RecipeBody): string[] =>
  follows.flatMap((ref) => {
    const row = content().rows.get(ref)
    return (row && compareWithRow(ingredients, row, row.label)) ?? []
  })

async function sameWall(entryId: string, body: CaseBody, authorKey: string): Promise<ReactNode[]> {
  const found = await likelyDuplicates(entryId, body, authorKey)
  return found.map(({ slug, title, because }) =>
    t.rich('finding.duplicate', {
      title,
      because: formatList(because.map((one) => t(`because.${one}`))),
      link: (label) => (
        <a key={slug} href={`/cases/${slug}`}>
          {label}
        </a>
      ),
    }),
  )
}

async function visitFindings(entryId: string, body: VisitBody): Promise<ReactNode[]> {
  const [sameDay, photos] = await Promise.all([
    visitsOfThatDay(entryId, body),
    Promise.all((body.photos ?? []).map(({ sha256 }) => similarPhotos(sha256, entryId))),
  ])
  return [
    ...sameDay.map((slug) =>
      t.rich('finding.sameDay', {
        link: (label) => (
          <a key={slug} href={`/cases/${body.case}#${slug}`}>
            {label}
          </a>
        ),
      }),
    ),
    ...photos.flatMap((alike, index) =>
      alike.flatMap(({ sha256, differs, shownBy }) =>
        shownBy.map(({ slug, revision }) =>
          t.rich(sha256 === body.photos?.[index]?.sha256 ? 'finding.samePhoto' : 'finding.photo', {
            number: index + 1,
            differs,
            link: (label) => (
              <a key={`${slug} ${revision}`} href={`/entries/${slug}/versions/${revision}`}>
                {label}
              </a>
            ),
          }),
        ),
      ),
    ),
  ]
}
