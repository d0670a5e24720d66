import type { Evidence } from '#lib/api/evidence-read.ts'
import { MIXED } from '#lib/entry/mixed.ts'
import { REPORTED } from '#lib/search/works.ts'
import { Facts } from '../_ui/facts.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { yearsOf } from './figures.ts'

const t = words('evidence')

/** How many works the figures rest on, who told of them, and what was left out. */
export function SizeSection({ evidence }: { evidence: Evidence }) {
  const { size, reported, mixed, interested, contradicted, invented, endPoints } = evidence
  const lost = Math.max(0, ...endPoints.map((one) => one.lostWorks))
  return (
    <Section id="size" title={t('size.title')} note={t('size.note')}>
      {size.works === 0 ? (
        <p>{t('size.none')}</p>
      ) : (
        <Facts
          facts={{
            [t('size.works')]: t('size.worksOn', {
              works: size.works,
              walls: size.walls,
              buildings: size.buildings,
            }),
            [t('size.years')]: t('size.wallYears', {
              years: Math.round(yearsOf(size.watchedDays)),
              longest: Math.floor(yearsOf(size.longestDays) * 10) / 10,
            }),
            [t('size.reported')]: (
              <Counts
                counts={REPORTED.map((one) => ({
                  key: one,
                  label: t(`size.reporter.${one}`),
                  count: reported[one],
                }))}
              />
            ),
            [t('size.mixed')]: (
              <Counts
                counts={MIXED.map((one) => ({
                  key: one,
                  label: t(`size.mixedOf.${one}`),
                  count: mixed[one],
                }))}
              />
            ),
            [t('size.interests')]: t('size.interestsOf', { count: interested }),
            [t('size.lost')]: t('size.lostOf', { count: lost }),
            [t('size.contradicted')]:
              contradicted > 0 ? t('size.contradictedOf', { count: contradicted }) : null,
            [t('size.invented')]: invented > 0 ? t('size.inventedOf', { count: invented }) : null,
          }}
        />
      )}
      <LeftOut evidence={evidence} />
    </Section>
  )
}

const Counts = ({ counts }: { counts: readonly { key: string; label: string; count: number }[] }) => (
  <ul className="plain-list">
    {counts
      .filter(({ count }) => count > 0)
      .map(({ key, label, count }) => (
        <li key={key}>{t('size.counted', { label, count })}</li>
      ))}
  </ul>
)

function LeftOut({ evidence: { setAside } }: { evidence: Evidence }) {
  const { leftOut, disputedCases, withdrawnCases, withdrawnVisits } = setAside
  return (
    <>
      <h3>{t('aside.title')}</h3>
      <ul>
        {leftOut.map(({ reason, works }) => (
          <li key={reason}>{t(`aside.${reason}`, { works })}</li>
        ))}
        <li>{t('aside.disputed', { count: disputedCases })}</li>
        <li>{t('aside.withdrawn', { cases: withdrawnCases, visits: withdrawnVisits })}</li>
      </ul>
    </>
  )
}
