import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { watchedRows } from '#lib/search/works.ts'
import { alternates } from '../../_ui/alternates.ts'
import { inEnglish } from '../../_ui/as-written.ts'
import { CautionSection, cautionsFor } from '../../_ui/cautions.tsx'
import { DataTable } from '../../_ui/data-table.tsx'
import { Hinted, hinter } from '../../_ui/hint.tsx'
import { NOT_HERE, NotHere } from '../../_ui/not-here.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { RowProportions } from '../../_ui/row-proportions.tsx'
import { Section } from '../../_ui/section.tsx'
import { SourceMark } from '../../_ui/source-mark.tsx'
import { English } from '../../_ui/written.tsx'
import { words } from '../../_words/index.ts'
import { RowName, RowStanding, RowStated } from './row-cells.tsx'

interface Props {
  params: Promise<{ id: string }>
}

const t = words('pages')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const table = content().tables.get((await params).id)
  return table ? { title: table.title, alternates: alternates(`/tables/${table.id}`) } : NOT_HERE
}

/** One proportion table: each row as its source states it, then worked out for the four lime states. */
export default async function TablePage({ params }: Props) {
  const table = content().tables.get((await params).id)
  if (!table) return <NotHere />
  const watched = await watchedRows(table.rows.map(({ ref }) => ref))
  const hint = hinter()
  const cautions = cautionsFor({
    // Old rows' powder and putty were slaked from quicklime, so their state rules nothing out.
    materials: table.rows.flatMap((row) => row.ingredients.map(({ material }) => ({ material }))),
    roles: table.rows.flatMap((row) => row.ingredients.map(({ role }) => role)),
    uses: table.rows.flatMap((row) => row.uses),
  })
  return (
    <>
      <PageHead title={<English>{table.title}</English>} kicker={<a href="/tables">{t('tables.title')}</a>}>
        <div className="lead prose" {...inEnglish()}>
          {table.intro.map((paragraph) => (
            <p key={paragraph}>
              <Hinted pieces={hint(paragraph)} />
            </p>
          ))}
        </div>
      </PageHead>
      <Section id="rows" title={t('table.rows')} note={t('table.rowsNote')}>
        <DataTable
          label={t('table.caption', { title: table.title })}
          caption={t('table.caption', { title: table.title })}
          hideCaption
          stack
          columns={[
            { key: 'row', head: t('table.row'), names: true },
            { key: 'stated', head: t('table.stated') },
            { key: 'standing', head: t('table.standing') },
            { key: 'source', head: t('table.source') },
          ]}
          rows={table.rows.map((row) => ({
            key: row.id,
            id: row.id,
            cells: {
              row: <RowName row={row} watched={watched.get(row.ref)} />,
              stated: <RowStated row={row} />,
              standing: <RowStanding row={row} />,
              source: (
                <SourceMark source={row.citation.source} locator={row.citation.locator} basis={row.basis} />
              ),
            },
          }))}
        />
      </Section>
      <RowProportions rows={table.rows} />
      <CautionSection cautions={cautions} />
    </>
  )
}
