import type { Published } from '#lib/db/published.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { asWritten } from '../../_ui/as-written.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { inSentence, labelList, labelOf } from '../../_ui/label.ts'
import { Quantity } from '../../_ui/quantity.tsx'
import { SCALES, StateMark } from '../../_ui/states.tsx'
import { Written, WrittenIn } from '../../_ui/written.tsx'
import { versionsPath } from '../../_versions/address.ts'
import { formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { Beside } from './beside.ts'
import { VisitTerms } from './visit-terms.tsx'

/** The visits of one work, oldest first: joint and unit always side by side, damp with the days since rain. */
export function VisitTable(props: {
  visits: readonly Published<VisitBody>[]
  beside: Beside
  title: string
}) {
  const { visits, beside, title } = props
  const t = words('pages')
  const [joint, unit, damp] = SCALES
  return (
    <DataTable
      label={title}
      caption={title}
      hideCaption
      stack
      columns={[
        { key: 'on', head: t('visit.on'), names: true },
        { key: 'joint', head: t('states.joint') },
        { key: 'unit', head: t('states.unit') },
        { key: 'damp', head: t('states.damp') },
        { key: 'seen', head: t('visit.seen') },
      ]}
      rows={visits.map(({ slug, entryId, body, author }) => ({
        key: slug,
        id: slug,
        cells: {
          on: (
            <>
              {formatDate(body.on)}
              <span className="note block">
                {body.baseline ? t('visit.baseline') : labelOf('seasons', body.season)}
              </span>
              <a className="note block" href={versionsPath(slug)}>
                {words('review')('visits.versions')}
                <span className="hidden-words">: {formatDate(body.on)}</span>
              </a>
              {beside.disputed.has(entryId) && (
                <strong className="block">{words('review')('disputed.title')}</strong>
              )}
            </>
          ),
          joint: <StateMark scale={joint} states={body} />,
          unit: <StateMark scale={unit} states={body} />,
          damp: (
            <>
              <StateMark scale={damp} states={body} />
              <span className="note block">
                {body.daysSinceRain === undefined
                  ? t('visit.rainUnknown')
                  : t('visit.rain', { days: body.daysSinceRain })}
              </span>
            </>
          ),
          seen: <Seen {...{ slug, body, author, entryId, beside }} />,
        },
      }))}
    />
  )
}

function Seen(props: { slug: string; body: VisitBody; author: string; entryId: string; beside: Beside }) {
  const { slug, body, author, entryId, beside } = props
  const t = words('pages')
  return (
    <>
      {body.seen !== undefined && (
        <span className="block" {...asWritten()}>
          {body.seen}
        </span>
      )}
      <VisitTerms body={body} />
      {body.salts.length > 0 && (
        <span className="note block">{t('visit.salts', { salts: labelList('salts', body.salts) })}</span>
      )}
      {body.readings.map((reading) => (
        <span className="note block" key={`${reading.kind}-${reading.value}-${reading.where ?? ''}`}>
          {labelOf('reading-kinds', reading.kind)}: <Quantity value={reading.value} unit={reading.unit} />
          {reading.where !== undefined && (
            <>
              {' '}
              (<Written>{reading.where}</Written>)
            </>
          )}
          {reading.instrument !== undefined && (
            <>
              , <Written>{reading.instrument}</Written>
            </>
          )}
        </span>
      ))}
      <span className="note block">
        <WrittenIn
          say={(how) =>
            t('visit.by', {
              author: beside.nameOf(author),
              who: inSentence(labelOf('observers', body.observer.who)),
              how,
            })
          }
        >
          {body.observer.how}
        </WrittenIn>
      </span>
      {body.others?.map((other) => (
        <span className="note block" key={JSON.stringify(other)}>
          {t('visit.other', {
            who: inSentence(labelOf('observers', other.who)),
            joint: inSentence(labelOf('joint-states', other.joint)),
            unit: inSentence(labelOf('unit-states', other.unit)),
            damp: inSentence(labelOf('damp-states', other.damp)),
          })}
        </span>
      ))}
      {beside.answers
        .filter((answer) => answer.entryId === entryId)
        .map((answer) => (
          <span className="block answer" key={answer.number}>
            <span className="note">
              {words('review')('answer.beside', {
                who: beside.nameOf(answer.byKey),
                date: formatDate(answer.at),
              })}
            </span>{' '}
            <Written>{answer.words}</Written>
          </span>
        ))}
      {beside.answerable.has(entryId) && (
        <a className="block touch screen-only" href={`/entries/${slug}/answer`}>
          {words('review')('answer.link')}
        </a>
      )}
    </>
  )
}
