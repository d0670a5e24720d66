import type { Deed } from '#lib/db/versions.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { CHECKLISTS } from '#lib/entry/checklists.ts'
import type { Outcome } from '#lib/entry/state.ts'
import type { NameOf } from '../_ui/author.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { fieldName } from './field-name.ts'

/** Said without a review before. */
const UNREVIEWED: readonly Outcome[] = ['dispute', 'answer']

/** What was decided and said about one version: who, when, in which words, and what they looked at. */
export function DeedList({
  kind,
  deeds,
  nameOf,
  strikeAt,
}: {
  kind: WrittenKind
  deeds: readonly Deed[]
  nameOf: NameOf
  /** For a steward: where words that nobody reviewed are taken off the page. */
  strikeAt?: ((deed: number) => string) | undefined
}) {
  const t = words('review')
  return (
    <ol className="deeds">
      {deeds.map((deed) => (
        <li key={deed.number}>
          <p>
            <strong>{t(`outcome.${deed.outcome}`)}</strong>{' '}
            <span className="note">
              {t('deed.by', { who: nameOf(deed.byKey), date: formatDate(deed.at) })}
            </span>
          </p>
          <p>{deed.words ?? t('deed.struck')}</p>
          {deed.fields.length > 0 && (
            <ul>
              {deed.fields.map(({ field, words: said }) => (
                <li key={field}>
                  {words('review')('value.part', { name: fieldName(pathOf(field), []), value: said })}
                </li>
              ))}
            </ul>
          )}
          <Looked kind={kind} deed={deed} />
          {strikeAt !== undefined && deed.words !== null && UNREVIEWED.includes(deed.outcome) && (
            <p>
              <a href={strikeAt(deed.number)}>{t('strike.link')}</a>
            </p>
          )}
        </li>
      ))}
    </ol>
  )
}

/** `works[repointing].title` as the path it was written from. */
export const pathOf = (text: string): string[] => text.match(/\[[^\]]*\]|[^.[\]]+/g) ?? []

function Looked({ kind, deed }: { kind: WrittenKind; deed: Deed }) {
  const t = words('review')
  const looked = CHECKLISTS[kind].filter((check) => deed.checklist[check] === true)
  if (looked.length === 0) return null
  return (
    <details>
      <summary>{t('deed.looked', { count: looked.length })}</summary>
      <ul>
        {looked.map((check) => (
          <li key={check}>{t(`check.${check}`)}</li>
        ))}
      </ul>
    </details>
  )
}
