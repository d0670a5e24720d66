import type { Metadata } from 'next'
import { ownDraft } from '#lib/db/drafts.ts'
import type { Change } from '#lib/entry/diff.ts'
import type { Json, Path } from '#lib/entry/json.ts'
import { enter } from '../../../_http/actor.ts'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { Notice } from '../../../_ui/notice.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import type { Query } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { ChangeList } from '../../../_versions/changes.tsx'
import { numberedName } from '../../../_versions/field-name.ts'
import { valueText } from '../../../_versions/field-value.tsx'
import { type Shown, shownIn } from '../../../_versions/shown.ts'
import { words } from '../../../_words/index.ts'
import { ChoiceOfText } from '../../../_write/choice-of-text.tsx'
import { FaultList } from '../../../_write/fault-list.tsx'
import { takeOver } from '../../actions.ts'
import { type Beside, besideNewer, choiceName } from '../../take-over.ts'
import '../../../_ui/review.css'
import '../../../_write/write.css'
import { redirect } from '../../../_http/redirect.ts'

const t = words('write')

export const generateMetadata = (): Metadata => ({ title: t('merge.title'), robots: { index: false } })

interface Props {
  params: Promise<{ draft: string }>
  searchParams: Promise<Query>
}

/** A draft beside a version that came between: what only one changed stands and is listed, what both changed is chosen. */
export default async function MergePage({ params, searchParams }: Props) {
  const [{ draft: id }, query] = [await params, await searchParams]
  const member = await enter('/write/[draft]/merge', `/write/${id}/merge`)
  if (!member) return <NotYours />
  const draft = await ownDraft(member.key, id)
  if (draft === null) redirect('/write?gone=1')
  const beside = draft.submittedRevisionId === null ? await besideNewer(draft) : null
  if (beside === null) redirect(`/write/${id}`)
  const { number, bodies, conflicts } = beside
  const shown = await shownIn(draft.kind, bodies)
  const nameOf = (path: Path) => numberedName(path, bodies)
  const open = conflicts.filter(({ path }) => query[choiceName(path)] === undefined)
  const text = (path: Path, value: Json | undefined) =>
    value !== undefined
      ? valueText(draft.kind, path, value, shown)
      : path.at(-1)?.startsWith('[')
        ? t('merge.gone')
        : ''
  return (
    <>
      <PageHead
        title={t('merge.title')}
        kicker={<a href={`/write/${id}/check`}>{t('both.back')}</a>}
        lead={t('merge.lead', { number: String(number), basedOn: String(draft.basedOn) })}
      >
        <p className="facts-line">
          <a href={`/entries/${draft.slug}/compare?from=${draft.basedOn}&to=${number}`}>
            {t('merge.compare')}
          </a>
        </p>
        {query.look === 'again' && (
          <Notice kind="caution">
            <p>{t('merge.again')}</p>
          </Notice>
        )}
        {query.look === 'choose' && (
          <FaultList
            faults={open.map(({ path }) => ({
              href: `#field-${choiceName(path)}`,
              sentence: t('merge.choose', { field: nameOf(path) }),
            }))}
          />
        )}
      </PageHead>
      <form className="write-form" action={takeOver}>
        <input type="hidden" name=":draft" value={id} />
        <input type="hidden" name=":number" value={number} />
        <input type="hidden" name=":version" value={draft.version} />
        {conflicts.length === 0 && <p>{t('merge.nothing')}</p>}
        {conflicts.map(({ path, theirs, yours }) => (
          <ChoiceOfText
            key={choiceName(path)}
            name={choiceName(path)}
            label={nameOf(path)}
            chosen={query[choiceName(path)]}
            needed
            sides={[
              {
                value: 'theirs',
                label: t('merge.theirs', { number: String(number) }),
                text: text(path, theirs),
              },
              { value: 'yours', label: t('merge.yours'), text: text(path, yours) },
            ]}
          />
        ))}
        <Undisputed {...{ beside, shown }} side="taken" />
        <Undisputed {...{ beside, shown }} side="kept" />
        <p className="note">{t('merge.rights')}</p>
        <div className="actions">
          <button className="button" type="submit">
            {t('merge.save')}
          </button>
        </div>
      </form>
    </>
  )
}

/** What one of the two changed alone, before and after, so that nothing is taken over unseen. */
function Undisputed({ beside, shown, side }: { beside: Beside; shown: Shown; side: 'taken' | 'kept' }) {
  const { bodies, number, view } = beside
  const changes: readonly Change[] = beside[side]
  if (changes.length === 0) return null
  return (
    <Section id={side} title={t(`merge.${side}`, { number: String(number) })}>
      <p className="note">{t(`merge.${side}Note`)}</p>
      <ChangeList kind={view.kind} changes={changes} bodies={bodies} shown={shown} nameOf={numberedName} />
    </Section>
  )
}
