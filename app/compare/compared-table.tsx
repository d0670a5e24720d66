import { inEnglish } from '../_ui/as-written.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { labelList } from '../_ui/label.ts'
import { Ratio } from '../_ui/ratio.tsx'
import { SourceMark } from '../_ui/source-mark.tsx'
import { StandingMark } from '../_ui/standing-mark.tsx'
import { English } from '../_ui/written.tsx'
import { words } from '../_words/index.ts'
import type { Compared } from './columns.ts'

const t = words('library')

/** What the chart draws, in numbers. */
export const ComparedTable = ({ caption, compared }: { caption: string; compared: readonly Compared[] }) => (
  <DataTable
    label={caption}
    caption={caption}
    stack
    columns={[
      { key: 'row', head: t('compare.row'), names: true },
      { key: 'written', head: t('compare.written') },
      { key: 'value', head: t('compare.value'), number: true },
      { key: 'standing', head: t('compare.standing') },
      { key: 'source', head: t('compare.source') },
    ]}
    rows={compared.map(({ row, ratio }) => ({
      key: row.ref,
      cells: {
        row: (
          <>
            <a href={`/tables/${row.ref}`} {...inEnglish()}>
              {row.label}
            </a>
            <span className="note block">{labelList('uses', row.uses)}</span>
          </>
        ),
        written: <English>{`${row.period}, ${row.region}`}</English>,
        value: <Ratio value={ratio} />,
        standing: <StandingMark standing={row.standing} />,
        source: <SourceMark source={row.citation.source} basis={row.basis} />,
      },
    }))}
  />
)
