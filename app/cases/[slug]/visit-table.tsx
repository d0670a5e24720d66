import type { Published } from '#lib/db/published.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { authorText } from '../../_ui/cite.tsx'
import { DataTable } from '../../_ui/data-table.tsx'
import { inSentence, labelList, labelOf } from '../../_ui/label.ts'
import { Quantity } from '../../_ui/quantity.tsx'
import { SCALES, StateMark } from '../../_ui/states.tsx'
import { formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** The visits of one work, oldest first: joint and unit always side by side, damp with the days since rain. */
export function VisitTable({ visits, title }: { visits: readonly Published<VisitBody>[]; title: string }) {
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
      rows={visits.map(({ slug, body, author }) => ({
        key: slug,
        id: slug,
        cells: {
          on: (
            <>
              {formatDate(body.on)}
              <span className="note block">
                {body.baseline ? t('visit.baseline') : labelOf('seasons', body.season)}
              </span>
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
          seen: <Seen body={body} author={author} />,
        },
      }))}
    />
  )
}

function Seen({ body, author }: { body: VisitBody; author: string }) {
  const t = words('pages')
  return (
    <>
      {body.seen !== undefined && <span className="block">{body.seen}</span>}
      {body.salts.length > 0 && (
        <span className="note block">{t('visit.salts', { salts: labelList('salts', body.salts) })}</span>
      )}
      {body.readings.map((reading) => (
        <span className="note block" key={`${reading.kind}-${reading.value}-${reading.where ?? ''}`}>
          {labelOf('reading-kinds', reading.kind)}: <Quantity value={reading.value} unit={reading.unit} />
          {reading.where !== undefined && ` (${reading.where})`}
          {reading.instrument !== undefined && `, ${reading.instrument}`}
        </span>
      ))}
      <span className="note block">
        {t('visit.by', {
          author: authorText(author),
          who: inSentence(labelOf('observers', body.observer.who)),
          how: body.observer.how,
        })}
      </span>
    </>
  )
}
