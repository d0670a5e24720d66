import type { Metadata } from 'next'
import { askedLanguage } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import { type Withdrawn, withdrawnEntry } from '#lib/db/entries.ts'
import { type KeptSheet, ownKeptSheet } from '#lib/db/kept-sheets.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { readSettings } from '#lib/env.ts'
import { currentActor, enter } from '../../../_http/actor.ts'
import { redirect } from '../../../_http/redirect.ts'
import { sheetFields } from '../../../_kept/fields.ts'
import { KeptBlocks } from '../../../_kept/kept-blocks.tsx'
import { kindOf } from '../../../_kept/kinds.ts'
import { Today } from '../../../_kept/today.tsx'
import { workSheet } from '../../../_kept/worked-sheet.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { asWritten } from '../../../_ui/as-written.ts'
import { Cautions } from '../../../_ui/cautions.tsx'
import { Facts } from '../../../_ui/facts.tsx'
import { InventedNotice } from '../../../_ui/invented.tsx'
import { labelOf } from '../../../_ui/label.ts'
import { NOT_HERE, NotHere } from '../../../_ui/not-here.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { Notice } from '../../../_ui/notice.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { addressWith } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { splitLanguage } from '../../../_words/language.ts'
import { calculationNamed } from '../../../work-out/calculations.ts'
import { deleteSheet, renameSheet } from '../actions.ts'

const t = words('kept')

interface Props {
  params: Promise<{ id: string }>
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const actor = await currentActor()
  const kept = actor.kind === 'member' ? await ownKeptSheet(actor.key, (await params).id) : null
  return kept === null ? NOT_HERE : { title: kept.name, robots: { index: false } }
}

/** A kept sheet as it was kept, and what would differ today. */
export default async function KeptSheetPage({ params }: Props) {
  const { id } = await params
  const member = await enter('/account/sheets/[id]', `/account/sheets/${id}`)
  if (member === null) return <NotYours />
  const kept = await ownKeptSheet(member.key, id)
  if (kept === null) return <NotHere lead={t('gone')} />
  // It stands as it printed, and is set against today in the language that it was kept in.
  const { language } = splitLanguage(kept.address)
  if (language !== askedLanguage()) redirect(`/account/sheets/${id}`, language)
  const slug = kept.recipe?.slug
  const [withdrawn, recipe, working] = await Promise.all([
    slug === undefined ? null : withdrawnEntry(slug),
    slug === undefined ? null : recipeBySlug(slug),
    workSheet(kept.address, { latest: true }),
  ])
  const { cautions = [] } = calculationNamed(kept.calculation) ?? {}
  return (
    <>
      <PageHead title={kept.name} kicker={<a href="/account/sheets">{t('title')}</a>}>
        {withdrawn && kept.recipe && <WithdrawnNotice withdrawn={withdrawn} title={kept.recipe.title} />}
        {recipe && recipe.standing !== 'in-use' && (
          <Notice
            kind={recipe.standing === 'known-hazard' ? 'hazard' : 'caution'}
            title={t('one.standing', { standing: labelOf('standings', recipe.standing) })}
          >
            <p {...asWritten()}>{recipe.standingReason}</p>
          </Notice>
        )}
        {kept.recipe?.invented === true && <InventedNotice page="one" />}
      </PageHead>
      <Cautions cautions={cautions.flatMap((one) => content().cautions.get(one) ?? [])} />
      <Section id="made" title={t('one.made')}>
        <MadeFrom kept={kept} />
      </Section>
      <Section id="figures" title={t('one.figures')} note={formatDate(kept.createdAt)}>
        <div className="bench-result kept-sheet">
          <p className="bench-inputs note">
            <strong>{t('one.inputs')}</strong> {kept.figures.inputs.join('; ')}.
          </p>
          <KeptBlocks blocks={kept.figures.blocks} />
          <p className="print-only address note">{`${readSettings().siteUrl}${kept.address}`}</p>
        </div>
      </Section>
      <Today kept={kept} working={working} />
      <div className="screen-only">
        <OwnForms kept={kept} />
      </div>
    </>
  )
}

/** On top, on paper too: whoever works from the sheet must know. */
const WithdrawnNotice = ({ withdrawn, title }: { withdrawn: Withdrawn; title: string }) => (
  <Notice kind="withdrawn" title={t('one.withdrawn', { date: formatDate(withdrawn.at) })}>
    <p>
      {withdrawn.erased
        ? t('one.withdrawnErased', { reason: withdrawn.words })
        : t('one.withdrawnWhy', { title, reason: withdrawn.words })}
    </p>
  </Notice>
)

const MadeFrom = ({ kept }: { kept: KeptSheet }) => (
  <Facts
    facts={{
      [t('one.kind')]: kindOf(kept.calculation),
      [t('one.on')]: formatDate(kept.createdAt),
      [t('one.recipe')]: kept.recipe && (
        <a href={addressWith(`/recipes/${kept.recipe.slug}`, { revision: kept.recipe.revision })}>
          {t('recipeAt', { title: kept.recipe.title, revision: kept.recipe.revision })}
        </a>
      ),
      [t('one.edition')]: kept.edition,
      [t('one.sums')]: String(kept.sums),
      [t('one.digest')]: kept.digest,
      [t('one.note')]: kept.note === '' ? null : <span className="kept-note">{kept.note}</span>,
    }}
  />
)

const OwnForms = ({ kept: { id, name, note } }: { kept: KeptSheet }) => (
  <>
    <Section id="change" title={t('change.title')} note={t('change.lead')}>
      <ActionForm
        id="rename"
        action={renameSheet}
        hidden={{ id }}
        fields={sheetFields({ name, note })}
        send={t('change.send')}
        faulty={t('faulty')}
        plain
      />
    </Section>
    <Section id="delete" title={t('delete.title')} note={t('delete.lead')}>
      <ActionForm
        id="delete-sheet"
        action={deleteSheet}
        hidden={{ id }}
        fields={[
          {
            name: 'sure',
            label: t('field.sure'),
            kind: 'checks',
            options: [{ value: 'yes', label: t('delete.sure') }],
          },
        ]}
        send={t('delete.send')}
        faulty={t('faulty')}
        plain
      />
    </Section>
  </>
)
