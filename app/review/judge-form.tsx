import { v7 } from 'uuid'
import type { WrittenKind } from '#lib/entry/body.ts'
import { CHECKLISTS } from '#lib/entry/checklists.ts'
import { type Change, diffBodies } from '#lib/entry/diff.ts'
import { type Path, pathText } from '#lib/entry/json.ts'
import { ActionForm, TypedArea } from '../_ui/action-form.tsx'
import { Section } from '../_ui/section.tsx'
import { ChangeList } from '../_versions/changes.tsx'
import { reviewLabel } from '../_versions/labels.ts'
import type { Shown } from '../_versions/shown.ts'
import { words } from '../_words/index.ts'
import { judge } from './actions.ts'

/**
 * What changed with room for words on each field, the checklist of the kind, and the verdict, in one form.
 *
 * @param bodies the version that it is laid beside (undefined for none), and the one on the desk
 * @param from number of the first of them
 */
export function JudgeForm(props: {
  kind: WrittenKind
  slug: string
  number: number
  changes: readonly Change[]
  bodies: readonly [before: unknown, body: unknown]
  from: number | null
  shown: Shown
}) {
  const { kind, slug, number, changes, bodies, from, shown } = props
  const t = words('review')
  const changed = new Set(changes.map(({ path }) => pathText(path)))
  return (
    <ActionForm
      id="judge"
      action={judge}
      hidden={{ key: v7(), slug, number: String(number) }}
      send={t('judge.send')}
      faulty={t('form.faulty')}
      fields={[
        {
          name: 'checks',
          label: t('judge.checklist'),
          hint: t('judge.checklistHint'),
          kind: 'checks',
          options: CHECKLISTS[kind].map((check) => ({ value: check, label: t(`check.${check}`) })),
        },
        {
          name: 'outcome',
          label: reviewLabel('outcome'),
          kind: 'choice',
          options: (['return', 'publish', 'decline'] as const).map((outcome) => ({
            value: outcome,
            label: t(`judge.${outcome}`),
          })),
        },
        {
          name: 'words',
          label: reviewLabel('words'),
          hint: t('judge.wordsHint'),
          kind: 'long',
          required: true,
          maxLength: 2000,
        },
      ]}
      above={
        <Section
          id="changes"
          title={from === null ? t('item.first') : t('item.since', { number: from })}
          note={t('judge.changesNote')}
        >
          <ChangeList
            {...{ kind, changes, bodies, shown }}
            beside={(path, name) => <OnField path={path} name={name} />}
          />
          {from !== null && (
            <details className="whole">
              <summary>{t('item.whole')}</summary>
              <ChangeList
                {...{ kind, shown }}
                changes={diffBodies(undefined, bodies[1])}
                bodies={[undefined, bodies[1]]}
                beside={(path, name) => !changed.has(pathText(path)) && <OnField path={path} name={name} />}
              />
            </details>
          )}
        </Section>
      }
    />
  )
}

/** Room for words to the author on one field, opened only where there are some to say. */
function OnField({ path, name }: { path: Path; name: string }) {
  const t = words('review')
  const id = `on-${pathText(path)}`
  return (
    <details className="on-field">
      <summary>
        {t('judge.onField')}
        <span className="hidden-words"> {t('judge.onFieldOf', { name })}</span>
      </summary>
      <label htmlFor={id} className="hidden-words">
        {t('judge.onFieldLabel', { name })}
      </label>
      <TypedArea id={id} name={`on:${pathText(path)}`} rows={2} maxLength={600} />
    </details>
  )
}
