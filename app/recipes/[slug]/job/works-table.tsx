import type { JobSheet } from '#lib/mortar/job-types.ts'
import { DataTable } from '../../../_ui/data-table.tsx'
import { Quantity } from '../../../_ui/quantity.tsx'
import type { System } from '../../../_ui/systems.ts'
import { formatNumber } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { ofWork } from './labels.ts'
import { Shown } from './shown.tsx'

/** What each of several works takes of the mortar; of one alone the totals say it all. */
export function WorksTable({ sheet, system }: { sheet: JobSheet; system: System }) {
  const { works, batch } = sheet
  if (works.length < 2) return null
  const t = words('job')
  const counted = works.some(({ unitCount }) => unitCount !== null)
  return (
    <>
      <DataTable<string>
        label={t('works.title')}
        caption={t('works.title')}
        columns={[
          { key: 'work', head: t('works.work'), names: true },
          { key: 'net', head: t('sheet.inPlace'), number: true },
          { key: 'made', head: t('sheet.made'), number: true },
          ...(batch ? [{ key: 'loads', head: t('works.loads'), number: true }] : []),
          ...(counted ? [{ key: 'units', head: t('sheet.bricks'), number: true }] : []),
        ]}
        rows={works.map(({ kind, netL, mortarL, unitCount }, k) => ({
          key: `${k}`,
          cells: {
            work: ofWork(k + 1, true, t(`kinds.${kind}`)),
            net: <Shown value={netL} unit="L" system={system} />,
            made: <Shown value={mortarL} unit="L" system={system} />,
            loads: batch && formatNumber(mortarL.typical / batch.mortarL, 1),
            units: unitCount && <Quantity value={unitCount} unit="1" />,
          },
        }))}
      />
      <p className="note">{t('works.note')}</p>
    </>
  )
}
