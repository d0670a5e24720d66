import type { Metadata } from 'next'
import { LIME_STATES } from '#lib/entry/terms.ts'
import { alternates } from '../../_ui/alternates.ts'
import { labelOf } from '../../_ui/label.ts'
import { PageHead } from '../../_ui/page-head.tsx'
import { SCALES } from '../../_ui/states.tsx'
import { words } from '../../_words/index.ts'

const t = words('pages')

export const generateMetadata = (): Metadata => ({
  title: t('sheet.title'),
  alternates: alternates('/record/sheet'),
})

const WALL = ['wall', 'place', 'stone', 'thickness', 'exposure', 'salts'] as const
const WORK = ['use', 'area', 'dates', 'weather', 'protection', 'recipe'] as const
const MIXED = [
  'lime',
  'limeParts',
  'sand',
  'sandParts',
  'other',
  'water',
  'moisture',
  'hottest',
  'hours',
] as const
const VISITS = [1, 2, 3] as const

/** One A4 sheet for the scaffold: the wall, the work, what was mixed, and room for three visits. */
export default function RecordSheetPage() {
  return (
    <>
      <PageHead
        title={t('sheet.title')}
        kicker={
          <a className="screen-only" href="/record">
            {t('record.title')}
          </a>
        }
      >
        <p className="note">{t('sheet.lead')}</p>
      </PageHead>
      <div className="sheet stack">
        <Blanks title={t('sheet.theWall')} names={WALL} />
        <Blanks title={t('sheet.theWork')} names={WORK} />
        <Blanks title={t('sheet.asMixed')} names={MIXED} />
        <Boxes
          name={t('sheet.limeState')}
          labels={LIME_STATES.map((state) => labelOf('measured-states', state))}
        />
        {VISITS.map((visit) => (
          <div key={visit} className="stack sheet-visit">
            <h2>{t('sheet.visit', { number: visit })}</h2>
            <div className="sheet-line">
              {(['date', 'who', 'daysSinceRain'] as const).map((name) => (
                <p key={name} className="sheet-blank">
                  {t(`sheet.blank.${name}`)}
                </p>
              ))}
            </div>
            {SCALES.map((scale) => (
              <Boxes
                key={scale.key}
                name={t(`states.${scale.key}`)}
                labels={scale.states.map((state) => labelOf(scale.vocabulary, state))}
              />
            ))}
            <p className="sheet-blank">{t('sheet.blank.seen')}</p>
          </div>
        ))}
      </div>
    </>
  )
}

type BlankName = (typeof WALL | typeof WORK | typeof MIXED)[number]

const Blanks = ({ title, names }: { title: string; names: readonly BlankName[] }) => (
  <div>
    <h2>{title}</h2>
    <div className="sheet-line">
      {names.map((name) => (
        <p key={name} className="sheet-blank">
          {t(`sheet.blank.${name}`)}
        </p>
      ))}
    </div>
  </div>
)

const Boxes = ({ name, labels }: { name: string; labels: readonly string[] }) => (
  <p className="sheet-scale">
    <strong>{name}</strong>
    {labels.map((label) => (
      <span key={label} className="nowrap">
        <span className="sheet-box" aria-hidden="true" />
        {label}
      </span>
    ))}
  </p>
)
