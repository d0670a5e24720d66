import type { Metadata } from 'next'
import { alternates } from '../_ui/alternates.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { Scales } from './scales.tsx'

const t = words('pages')
const HOLDS = ['place', 'fabric', 'mortars', 'works', 'mixed', 'visits', 'interests'] as const
const MANNERS = ['together', 'light', 'rain', 'photograph', 'failure'] as const

export const generateMetadata = (): Metadata => ({
  title: t('record.title'),
  alternates: alternates('/record'),
})

/** What a record holds, the scales it is kept on, and a sheet to fill in on the scaffold. */
export default function RecordPage() {
  return (
    <>
      <PageHead title={t('record.title')} lead={t('record.lead')}>
        <p className="screen-only prose">{t('record.writeNote')}</p>
        <p className="actions facts-line screen-only">
          <a className="button" href="/write/new?kind=case">
            {t('record.write')}
          </a>
        </p>
      </PageHead>
      <Section id="holds" title={t('record.holds')}>
        <ul>
          {HOLDS.map((part) => (
            <li key={part}>{t(`record.part.${part}`)}</li>
          ))}
        </ul>
      </Section>
      <Section id="manners" title={t('record.manners')}>
        <ol>
          {MANNERS.map((one) => (
            <li key={one}>{t(`record.manner.${one}`)}</li>
          ))}
        </ol>
      </Section>
      <Section id="scales" title={t('record.scales')} note={t('record.scalesNote')}>
        <Scales />
      </Section>
      <div className="screen-only">
        <Section id="sheet" title={t('record.sheet')} note={t('record.sheetNote')}>
          <p>
            <a className="button button-plain" href="/record/sheet">
              {t('record.sheetLink')}
            </a>
          </p>
        </Section>
      </div>
    </>
  )
}
