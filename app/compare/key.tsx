import { STANDINGS } from '#lib/entry/terms.ts'
import { labelOf } from '../_ui/label.ts'
import { words } from '../_words/index.ts'
import { Bar, StandingShape } from './chart.tsx'

const t = words('library')

/** What the shapes of the chart mean. */
export const Key = () => (
  <ul className="chart-key" aria-label={t('compare.key')}>
    {STANDINGS.map((standing) => (
      <li key={standing}>
        <svg width="14" height="18" viewBox="0 0 14 18" aria-hidden="true">
          <StandingShape standing={standing} x={7} y={9} size={4} />
        </svg>
        {labelOf('standings', standing)}
      </li>
    ))}
    {([false, true] as const).map((open) => (
      <li key={String(open)}>
        <svg width="14" height="18" viewBox="0 0 14 18" aria-hidden="true">
          <Bar x={7} half={2.2} top={1} bottom={17} open={open} />
        </svg>
        {t(open ? 'compare.keyOpen' : 'compare.keyStated')}
      </li>
    ))}
    <li>
      <svg width="14" height="18" viewBox="0 0 14 18" aria-hidden="true">
        <StandingShape standing="in-use" x={7} y={9} size={2.2} />
      </svg>
      {t('compare.keyDescends')}
    </li>
  </ul>
)
