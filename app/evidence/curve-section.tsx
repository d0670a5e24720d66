import type { CauseShares, EndPointFigures, LostBounds } from '#lib/api/evidence-figures.ts'
import { type Competing, MIN_WALL_YEARS, MIN_WALLS, type Quantile } from '#lib/evidence/index.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { Fold } from '../_ui/fold.tsx'
import { Notice } from '../_ui/notice.tsx'
import { CurvePlot } from '../_ui/plot-curve.tsx'
import { Section } from '../_ui/section.tsx'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { Banded } from './banded.tsx'
import { bandText, percent, plotCurve, shareText, yearsOf } from './figures.ts'

const t = words('evidence')

/** One end point over the years: curve, band and numbers; or what is missing for them. */
export function CurveSection({ figures }: { figures: EndPointFigures }) {
  const { endPoint, horizons, median, lost, watching } = figures
  const curve = plotCurve(endPoint, t('curve.label', { works: watching.works }), figures)
  const title = t('curve.plot', { end: t(`end.${endPoint}`) })
  return (
    <Section id="curve" title={t('curve.title')} note={t('curve.note')}>
      <h3>{t(`end.${endPoint}`)}</h3>
      <Fates figures={figures} />
      {curve === null ? (
        <Lacking figures={figures} />
      ) : (
        <>
          <figure>
            <CurvePlot
              id="plot-curve"
              title={title}
              text={t('curve.text')}
              yLabel={t('curve.y')}
              curves={[curve]}
              marks={horizons.map(({ years }) => years)}
            />
          </figure>
          <Fold summary={t('curve.table')}>
            <DataTable
              label={t('curve.table')}
              caption={t('curve.table')}
              columns={[
                { key: 'years', head: t('curve.years'), names: true },
                { key: 'share', head: t('curve.share'), number: true },
                { key: 'band', head: t('curve.band'), number: true },
                { key: 'standing', head: t('curve.standing'), number: true },
                { key: 'happened', head: t('curve.happened'), number: true },
              ]}
              rows={horizons.map((point) => ({
                key: String(point.years),
                cells: {
                  years: point.years,
                  share: shareText(point),
                  band: bandText(point),
                  standing: point.standing,
                  happened: point.happened,
                },
              }))}
            />
          </Fold>
          <p className="note">{t('curve.bandNote')}</p>
          <p>
            {t('curve.median')}: {medianText(median)}.
          </p>
          {figures.incidence.length > 0 && <Incidence figures={figures} />}
          {lost !== null && <Lost lost={lost} works={figures.lostWorks} />}
        </>
      )}
    </Section>
  )
}

function Fates({ figures }: { figures: EndPointFigures }) {
  const { reached, watched, impossible, competing, watching } = figures
  return (
    <>
      <p>
        {t('curve.fates', {
          reached,
          watched,
          impossible,
          competing: competing.reduce((sum, { works }) => sum + works, 0),
        })}
      </p>
      <p>
        {t('curve.watching', {
          works: watching.works,
          walls: watching.walls,
          years: Math.round(yearsOf(watching.watchedDays)),
        })}
      </p>
      {competing.length > 0 && (
        <p className="note">
          {t('curve.competing')}:{' '}
          {formatList(
            competing.map(({ how, works }) => t('curve.competingOf', { how: t(`how.${how}`), works })),
          )}
        </p>
      )}
    </>
  )
}

/** What it would take to draw a curve. */
export function Lacking({ figures: { lacking } }: { figures: Pick<EndPointFigures, 'lacking'> }) {
  if (lacking === null) return <p>{t('curve.lackingNone')}</p>
  const missing = [
    ...(lacking.walls > 0 ? [t('curve.lackingWalls', { count: lacking.walls })] : []),
    ...(lacking.wallYears > 0 ? [t('curve.lackingYears', { count: Math.ceil(lacking.wallYears) })] : []),
  ]
  return (
    <Notice kind="note" title={t('curve.lackingTitle')}>
      <p>{t('curve.lacking', { walls: MIN_WALLS, years: MIN_WALL_YEARS, missing: formatList(missing) })}</p>
    </Notice>
  )
}

const tenth = (days: number) => Math.round(yearsOf(days) * 10) / 10

function medianText(median: Quantile | null): string {
  if (median === null || median.from === null || median.to === null) return t('curve.medianUnknown')
  const { from, to, low, high } = median
  const limits =
    high === null
      ? t('curve.limitsUnknown', { low: tenth(low ?? 0) })
      : t('curve.limits', { low: tenth(low ?? 0), high: tenth(high) })
  return t('curve.medianBetween', { from: tenth(from), to: tenth(to), limits })
}

/** How the answer would change with what nobody knows: the walls lost to sight. */
function Lost({ lost, works }: { lost: LostBounds; works: number }) {
  return (
    <>
      <h3>{t('lost.title')}</h3>
      <p>{t('lost.note', { works })}</p>
      <Fold summary={t('lost.table')}>
        <DataTable
          label={t('lost.table')}
          caption={t('lost.table')}
          columns={[
            { key: 'years', head: t('curve.years'), names: true },
            { key: 'all', head: t('lost.all'), number: true },
            { key: 'none', head: t('lost.none'), number: true },
          ]}
          rows={lost.horizons.map(({ years, allChanged, noneChanged }) => ({
            key: String(years),
            cells: { years, all: percent(allChanged.low), none: percent(noneChanged.high) },
          }))}
        />
      </Fold>
    </>
  )
}

const sentence = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

/** Share of all works to which each thing had come first. */
function Incidence({ figures: { incidence, endPoint } }: { figures: EndPointFigures }) {
  const causeLabel = (cause: CauseShares['cause']) =>
    cause === endPoint ? t(`end.${endPoint}`) : sentence(t(`how.${cause as Competing}`))
  const years = incidence[0]?.horizons.map((one) => one.years) ?? []
  return (
    <>
      <h3>{t('incidence.title')}</h3>
      <p>{t('incidence.note')}</p>
      <Fold summary={t('incidence.table')}>
        <DataTable
          label={t('incidence.table')}
          caption={t('incidence.table')}
          columns={[
            { key: 'what', head: t('incidence.what'), names: true },
            ...years.map((y) => ({ key: String(y), head: t('states.at', { years: y }), number: true })),
          ]}
          rows={incidence.map(({ cause, horizons }) => ({
            key: cause,
            cells: {
              what: causeLabel(cause),
              ...Object.fromEntries(
                horizons.map((one) => [String(one.years), <Banded key={one.years} share={one} />]),
              ),
            },
          }))}
        />
      </Fold>
    </>
  )
}
