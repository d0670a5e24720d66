import { DataTable } from '../_ui/data-table.tsx'
import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import type { CasePlace } from './places.ts'

/** The map in words: every country, or every region of one, with its cases. */
export function PlaceList({
  places,
  country,
}: {
  places: readonly CasePlace[]
  country: string | undefined
}) {
  const t = words('find')
  return (
    <DataTable
      label={t('map.list')}
      caption={t('map.list')}
      columns={[
        { key: 'place', head: t(country === undefined ? 'map.country' : 'map.region'), names: true },
        { key: 'cases', head: t('map.cases'), number: true },
      ]}
      rows={places.map(({ id, label, count, href }) => ({
        key: id,
        cells: { place: <a href={href}>{label}</a>, cases: formatNumber(count) },
      }))}
    />
  )
}
