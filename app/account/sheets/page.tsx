import type { Metadata } from 'next'
import { type KeptLine, keptSheetsOf } from '#lib/db/kept-sheets.ts'
import { MOST_SHEETS } from '#lib/workflow/sheet-keep.ts'
import { enter } from '../../_http/actor.ts'
import { kindOf, recipeTitle } from '../../_kept/kinds.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { InventedMark } from '../../_ui/invented.tsx'
import { NotYours } from '../../_ui/not-yours.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { addressWith } from '../../_ui/query.ts'
import { formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

const t = words('kept')

export const generateMetadata = (): Metadata => ({ title: t('title'), robots: { index: false } })

/** Every sheet that one keeps. */
export default async function KeptSheetsPage() {
  const member = await enter('/account/sheets', '/account/sheets')
  if (member === null) return <NotYours />
  const sheets = await keptSheetsOf(member.key)
  return (
    <>
      <PageHead
        title={t('title')}
        kicker={<a href="/account">{words('account')('account.title')}</a>}
        lead={t('lead')}
      />
      {sheets.length === 0 ? <p>{t('none')}</p> : <SheetTable sheets={sheets} />}
      <p className="note kept-count">{t('count', { count: sheets.length, most: MOST_SHEETS })}</p>
      <p className="facts-line">
        <a href="/work-out">{t('workshop')}</a>
        <a href="/recipes">{t('recipes')}</a>
      </p>
    </>
  )
}

const SheetTable = ({ sheets }: { sheets: readonly KeptLine[] }) => (
  <DataTable
    stack
    label={t('title')}
    caption={t('title')}
    hideCaption
    columns={[
      { key: 'name', head: t('column.name'), names: true },
      { key: 'kind', head: t('column.kind') },
      { key: 'on', head: t('column.on') },
      { key: 'recipe', head: t('column.recipe') },
    ]}
    rows={sheets.map(({ id, name, calculation, createdAt, recipe }) => ({
      key: id,
      cells: {
        name: <a href={`/account/sheets/${id}`}>{name}</a>,
        kind: kindOf(calculation),
        on: formatDate(createdAt),
        recipe: recipe && (
          <>
            <a href={addressWith(`/recipes/${recipe.slug}`, { revision: recipe.revision })}>
              {t('recipeAt', { title: recipeTitle(recipe), revision: recipe.revision })}
            </a>{' '}
            {recipe.invented && <InventedMark />}
          </>
        ),
      },
    }))}
  />
)
