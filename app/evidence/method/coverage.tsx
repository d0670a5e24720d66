import { DataTable } from '../../_ui/data-table.tsx'
import { BasisMark } from '../../_ui/source-mark.tsx'
import { formatDate, formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

const t = words('evidence')

/** What `npm run bench -- coverage` printed: of 100 runs, those in which the limits held the truth. */
const MEASURED = {
  on: '2026-11-30',
  runs: 500,
  seed: 20261125,
  years: [2, 5, 10, 15],
  scenes: [
    { buildings: 10, walls: 1, alike: false, held: [99.8, 98.6, 97.2, 98], median: 98, width: 76.5 },
    { buildings: 40, walls: 1, alike: false, held: [94.2, 96.8, 96.8, 97.8], median: 97.2, width: 41.1 },
    { buildings: 150, walls: 1, alike: false, held: [94.8, 97.2, 94.8, 96.8], median: 95.8, width: 21.9 },
    { buildings: 20, walls: 4, alike: true, held: [96.2, 96.4, 96.6, 96.2], median: 97.2, width: 34.2 },
  ],
} as const

/** How often limits held the truth on walls made up by chance, and how to try it again. */
export function Coverage() {
  const { on, runs, seed, years, scenes } = MEASURED
  const all = scenes.flatMap(({ held, median }) => [...held, median])
  const tenth = (value: number) => formatNumber(value, 1)
  return (
    <>
      <p>
        {t('method.simulated', {
          ...{ date: formatDate(on), runs, seed: String(seed) },
          ...{ least: tenth(Math.min(...all)), most: tenth(Math.max(...all)) },
        })}{' '}
        <BasisMark basis="measured" />
      </p>
      <DataTable
        label={t('method.coverage.caption')}
        caption={t('method.coverage.caption')}
        columns={[
          { key: 'scene', head: t('method.coverage.scene'), names: true },
          ...years.map((y) => ({ key: String(y), head: t('states.at', { years: y }), number: true })),
          { key: 'median', head: t('method.coverage.median'), number: true },
          { key: 'width', head: t('method.coverage.width'), number: true },
        ]}
        rows={scenes.map(({ buildings, walls, alike, held, median, width }) => ({
          key: `${buildings} ${walls}`,
          cells: {
            scene: t(alike ? 'method.coverage.alike' : 'method.coverage.apart', { buildings, walls }),
            ...Object.fromEntries(years.map((y, k) => [String(y), tenth(held[k] ?? 0)])),
            median: tenth(median),
            width: t('method.coverage.points', { points: tenth(width) }),
          },
        }))}
      />
      <p className="note">{t('method.coverage.note')}</p>
    </>
  )
}
