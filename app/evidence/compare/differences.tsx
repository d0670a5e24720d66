import type { Comparison } from '#lib/api/evidence-compare.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { Fold } from '../../_ui/fold.tsx'
import { Notice } from '../../_ui/notice.tsx'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { Banded } from '../banded.tsx'
import { bandText, shareText } from '../figures.ts'

const t = words('evidence')

/** The curves in numbers, group by group. */
export function GroupNumbers({ groups, labels }: { groups: Comparison['groups']; labels: Labels }) {
  const years = [...new Set(groups.flatMap(({ figures }) => figures.horizons.map((one) => one.years)))].sort(
    (a, b) => a - b,
  )
  return (
    <Fold summary={t('compare.numbers')}>
      <DataTable
        label={t('compare.numbers')}
        caption={t('compare.numbers')}
        columns={[
          { key: 'years', head: t('curve.years'), names: true },
          ...groups.map(({ key }) => ({ key, head: labels.get(key) ?? key, number: true })),
        ]}
        rows={years.map((y) => ({
          key: String(y),
          cells: {
            years: y,
            ...Object.fromEntries(
              groups.map(({ key, figures }) => {
                const point = figures.horizons.find((one) => one.years === y)
                return [key, point && <Banded share={point} />]
              }),
            ),
          },
        }))}
      />
    </Fold>
  )
}

export type Labels = ReadonlyMap<string, string>

/** Whether all groups are the same walls. */
export const areSame = ({ groups, overlaps }: Comparison): boolean =>
  overlaps.length === (groups.length * (groups.length - 1)) / 2 &&
  overlaps.every(({ whole }) => whole === 'both')

/** Which groups have walls in common, how many, and what that means for what is shown of them. */
export function Overlaps({ comparison, labels }: { comparison: Comparison; labels: Labels }) {
  const { overlaps } = comparison
  if (overlaps.length === 0) return null
  const isAll = areSame(comparison)
  return (
    <Notice kind="note" title={t(isAll ? 'compare.sameTitle' : 'compare.overlapTitle')}>
      <ul>
        {overlaps.map(({ first, second, works, walls, whole }) => (
          <li key={`${first} ${second}`}>
            {t(`compare.overlap.${whole ?? 'part'}`, {
              first: labels.get(first) ?? first,
              second: labels.get(second) ?? second,
              works,
              walls,
            })}
          </li>
        ))}
      </ul>
      <p>{t(isAll ? 'compare.sameText' : 'compare.overlapText')}</p>
    </Notice>
  )
}

/** How far each pair of groups is apart, with limits; and the test over all of them. */
export function Differences({ comparison, labels }: { comparison: Comparison; labels: Labels }) {
  const { pairs, test } = comparison
  if (pairs.length === 0) return null
  return (
    <>
      <h3>{t('compare.differences')}</h3>
      <p>{t('compare.differencesNote')}</p>
      {pairs.map(({ first, second, differences }) => {
        const caption = t('compare.pair', {
          first: labels.get(first) ?? first,
          second: labels.get(second) ?? second,
        })
        return (
          <Fold key={caption} summary={caption}>
            <DataTable
              label={caption}
              caption={caption}
              columns={[
                { key: 'years', head: t('curve.years'), names: true },
                { key: 'difference', head: t('compare.differences'), number: true },
                { key: 'band', head: t('curve.band'), number: true },
              ]}
              rows={differences.map((one) => ({
                key: String(one.years),
                cells: { years: one.years, difference: shareText(one), band: bandText(one) },
              }))}
            />
          </Fold>
        )
      })}
      {test !== null && (
        <p>
          {t('compare.testText', {
            how:
              test.shuffles > 0 ? t('compare.shuffled', { count: test.shuffles }) : t('compare.approximate'),
            chi: test.chiSquare,
            degrees: test.degrees,
            p:
              test.p < 0.001
                ? t('compare.pBelow', { p: 0.001 })
                : t('compare.p', { p: formatNumber(test.p, 3) }),
          })}
        </p>
      )}
    </>
  )
}
