import type { Fared } from '#lib/db/faring.ts'
import { wilson } from '#lib/evidence/index.ts'
import { words } from '../../_words/index.ts'
import { DataTable } from '../data-table.tsx'
import { labelOf } from '../label.ts'

/** Walls below which a share is only counted: an interval of so few would be read as more than it is. */
export const LEAST_WALLS = 5

/**
 * Families of mortar with how the walls that had them were last seen: counts, the longest watch, intervals; and how
 * many disputed cases were left out.
 */
export function FaringTable({ faring, caption }: { faring: Fared; caption: string }) {
  const t = words('find')
  return (
    <>
      <DataTable
        label={caption}
        caption={caption}
        hideCaption
        stack
        columns={[
          { key: 'family', head: t('like.family'), names: true },
          { key: 'walls', head: t('like.walls'), number: true },
          { key: 'longest', head: t('like.longest') },
          { key: 'joint', head: t('like.joint') },
          { key: 'stone', head: t('like.stone') },
        ]}
        rows={faring.families.map((one) => ({
          key: one.family,
          cells: {
            family: labelOf('families', one.family),
            walls: one.walls,
            longest:
              one.longestYears === null
                ? t('like.never')
                : t('like.years', { years: Math.floor(one.longestYears) }),
            joint: <Share part={one.jointHolds} count={one.seen} />,
            stone: <Share part={one.unitSound} count={one.seen} />,
          },
        }))}
      />
      <p className="note">{t('like.intervals', { least: LEAST_WALLS })}</p>
      {faring.disputed > 0 && <p className="note">{t('like.disputed', { count: faring.disputed })}</p>}
    </>
  )
}

function Share({ part, count }: { part: number; count: number }) {
  const t = words('find')
  if (count === 0) return t('like.never')
  const interval = count < LEAST_WALLS ? null : wilson(part, count)
  return (
    <>
      {t('like.of', { part, count })}
      <span className="note block">
        {interval === null
          ? t('like.seldom')
          : t('like.interval', {
              low: Math.round(interval.low * 100),
              high: Math.round(interval.high * 100),
            })}
      </span>
    </>
  )
}
