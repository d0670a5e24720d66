import type { Metadata } from 'next'
import { v7 } from 'uuid'
import { enter } from '../../../_http/actor.ts'
import { sheetFields } from '../../../_kept/fields.ts'
import { KeptBlocks } from '../../../_kept/kept-blocks.tsx'
import { kindOf } from '../../../_kept/kinds.ts'
import { type WorkedSheet, type Working, workSheet } from '../../../_kept/worked-sheet.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { InventedNotice } from '../../../_ui/invented.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { Notice } from '../../../_ui/notice.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { words } from '../../../_words/index.ts'
import { keepSheet } from '../actions.ts'

const t = words('kept')

export const generateMetadata = (): Metadata => ({ title: t('new.title'), robots: { index: false } })

/** Asks what a sheet shall be called, and shows what will be kept of it. The address holds the sheet's own. */
export default async function NewSheetPage({ searchParams }: { searchParams: Promise<Query> }) {
  const of = first((await searchParams).of)
  const member = await enter('/account/sheets/new', addressWith('/account/sheets/new', { of }))
  if (member === null) return <NotYours />
  const working = of === undefined ? null : await workSheet(of)
  if (working?.ok) return <Keep sheet={working.sheet} />
  return <NothingToKeep working={working} of={of} />
}

const Keep = ({ sheet }: { sheet: WorkedSheet }) => (
  <>
    <PageHead title={t('new.title')} kicker={<a href="/account/sheets">{t('title')}</a>} lead={t('new.lead')}>
      {sheet.recipe?.invented === true && <InventedNotice page="one" />}
    </PageHead>
    <ActionForm
      id="keep"
      action={keepSheet}
      hidden={{ id: v7(), of: sheet.address }}
      fields={sheetFields({ name: sheet.title, note: '' })}
      send={t('new.send')}
      faulty={t('faulty')}
    />
    <p>
      <a href={sheet.address}>{t('new.back')}</a>
    </p>
    <Section id="what" title={t('new.what')} note={kindOf(sheet.calculation)}>
      <div className="bench-result kept-sheet">
        <KeptBlocks blocks={sheet.figures.blocks} open={false} />
      </div>
    </Section>
  </>
)

const NothingToKeep = ({ working, of }: { working: Working | null; of: string | undefined }) => (
  <PageHead
    title={t('new.unworked')}
    kicker={<a href="/account/sheets">{t('title')}</a>}
    lead={working === null ? t('new.none') : undefined}
  >
    {working !== null && !working.ok && (
      <Notice kind="caution">
        {working.sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Notice>
    )}
    <p className="facts-line">
      {working !== null && of !== undefined && <a href={of}>{t('new.mend')}</a>}
      <a href="/work-out">{t('workshop')}</a>
      <a href="/recipes">{t('recipes')}</a>
    </p>
  </PageHead>
)
