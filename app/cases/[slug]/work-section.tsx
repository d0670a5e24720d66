import type { Published } from '#lib/db/published.ts'
import type { Work } from '#lib/entry/case.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { asWritten } from '../../_ui/as-written.ts'
import { Facts } from '../../_ui/facts.tsx'
import { measureText, proportionText } from '../../_ui/ingredients.tsx'
import { inSentence, labelOf } from '../../_ui/label.ts'
import { Notice } from '../../_ui/notice.tsx'
import { Quantity } from '../../_ui/quantity.tsx'
import { RevisionLink } from '../../_ui/revision-link.tsx'
import { Section } from '../../_ui/section.tsx'
import { Written } from '../../_ui/written.tsx'
import { formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { Beside } from './beside.ts'
import { VisitStrip } from './visit-strip.tsx'
import { VisitTable } from './visit-table.tsx'
import { disagreements, GAP_YEARS, gaps, SAME_STATE_DAYS } from './watch.ts'

const t = words('pages')

/** One work on the wall: how it was done and mixed, and what every later visit found. */
export function WorkSection(props: {
  work: Work
  recipeTitle: string | undefined
  visits: readonly Published<VisitBody>[]
  beside: Beside
}) {
  const { work, recipeTitle, visits, beside } = props
  const bodies = visits.map(({ body }) => body)
  return (
    <Section id={`work-${work.id}`} title={<Written>{work.title}</Written>} note={labelOf('uses', work.use)}>
      <Facts
        facts={{
          [t('work.dates')]: datesOf(work),
          [t('work.area')]: work.areaM2 !== undefined ? <Quantity value={work.areaM2} unit="m2" /> : null,
          [t('work.recipe')]:
            work.recipe === undefined ? (
              t('work.noRecipe')
            ) : (
              <RevisionLink address={work.recipe} title={recipeTitle} />
            ),
          [t('work.mixed')]: work.mixed && <Mixed mixed={work.mixed} />,
          [t('work.weather')]: work.weather && <Written>{work.weather}</Written>,
          [t('work.protection')]: work.protection && <Written>{work.protection}</Written>,
          [t('work.tools')]: work.tools && <Written>{work.tools}</Written>,
          [t('work.ended')]: work.ended && endOf(work.ended),
        }}
      />
      {bodies.length === 0 ? (
        <p>{t('work.unseen')}</p>
      ) : (
        <>
          {bodies.length > 1 && (
            <VisitStrip visits={bodies} title={t('work.strip', { work: work.title, count: bodies.length })} />
          )}
          <VisitTable visits={visits} beside={beside} title={t('work.visits', { work: work.title })} />
          <Silences visits={bodies} />
        </>
      )}
    </Section>
  )
}

/** What the visits leave open: no baseline, years without a look, two looks that disagree. */
function Silences({ visits }: { visits: readonly VisitBody[] }) {
  const noBaseline = !visits.some(({ baseline }) => baseline)
  return (
    <>
      {disagreements(visits).map(({ first, second, about }) => (
        <Notice key={second.on} kind="note" title={t('work.disagree')}>
          <p>
            {t('work.disagreement', {
              first: formatDate(first.on),
              second: formatDate(second.on),
              days: SAME_STATE_DAYS,
              what: about
                .map((key) =>
                  t('work.differs', {
                    scale: inSentence(t(`states.${key}`)),
                    first: inSentence(labelOf(`${key}-states`, first[key])),
                    second: inSentence(labelOf(`${key}-states`, second[key])),
                  }),
                )
                .join('; '),
            })}
          </p>
        </Notice>
      ))}
      {(noBaseline || gaps(visits).length > 0) && (
        <ul className="note">
          {noBaseline && <li>{t('work.noBaseline')}</li>}
          {gaps(visits).map((gap) => (
            <li key={gap.from}>
              {t('work.gap', {
                from: formatDate(gap.from),
                to: formatDate(gap.to),
                years: gap.years,
                limit: GAP_YEARS,
              })}
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

const datesOf = ({ started, finished }: Work) =>
  started === finished
    ? formatDate(started)
    : t('work.fromTo', { from: formatDate(started), to: formatDate(finished) })

const endOf = ({ how, on, note }: NonNullable<Work['ended']>) => (
  <>
    {t('work.endedOn', { how: labelOf('work-ends', how), date: formatDate(on) })}
    {note !== undefined && (
      <>
        . <Written>{note}</Written>
      </>
    )}
  </>
)

function Mixed({ mixed }: { mixed: NonNullable<Work['mixed']> }) {
  const { ingredients, waterL, sandMoisturePercent, hottestC, hoursToUse, note } = mixed
  return (
    <>
      {ingredients.length > 0 && (
        <span className="block">
          {proportionText(ingredients)} <span className="note">{measureText(ingredients)}</span>
        </span>
      )}
      {waterL !== undefined && (
        <span className="block">
          {t('work.water')} <Quantity value={waterL} unit="L" />
        </span>
      )}
      {sandMoisturePercent !== undefined && (
        <span className="block">
          {t('work.moisture')} <Quantity value={sandMoisturePercent} unit="%" />
        </span>
      )}
      {hottestC !== undefined && (
        <span className="block">
          {t('work.hottest')} <Quantity value={hottestC} unit="C" />
        </span>
      )}
      {hoursToUse !== undefined && (
        <span className="block">
          {t('work.hours')} <Quantity value={hoursToUse} unit="h" />
        </span>
      )}
      {note !== undefined && (
        <span className="note block" {...asWritten()}>
          {note}
        </span>
      )}
    </>
  )
}
