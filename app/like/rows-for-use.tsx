import { content } from '#lib/content/index.ts'
import { STANDINGS, type Use } from '#lib/entry/terms.ts'
import { inSentence, labelOf } from '../_ui/label.ts'
import { Section } from '../_ui/section.tsx'
import { StandingMark } from '../_ui/standing-mark.tsx'
import { English } from '../_ui/written.tsx'
import { words } from '../_words/index.ts'

/** What the old tables put together for a use, those still in use first. */
export function RowsForUse({ use }: { use: Use | undefined }) {
  const t = words('find')
  if (use === undefined) return <p className="note">{t('like.rowsOpen')}</p>
  const rows = [...content().rows.values()]
    .filter(({ uses }) => uses.includes(use))
    .sort((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing))
  return (
    <Section
      id="rows"
      title={t('like.rows')}
      note={t('like.rowsNote', { use: inSentence(labelOf('uses', use)) })}
    >
      {rows.length === 0 ? (
        <p>{t('like.rowsNone')}</p>
      ) : (
        <ul>
          {rows.map(({ ref, label, region, period, standing }) => (
            <li key={ref}>
              <English>
                <a href={`/tables/${ref}`}>{label}</a>
                {`, ${region}, ${period} `}
              </English>
              {standing !== 'in-use' && <StandingMark standing={standing} />}
            </li>
          ))}
        </ul>
      )}
    </Section>
  )
}
