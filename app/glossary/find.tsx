import type { GlossaryTerm } from '#lib/content/types.ts'
import { asWritten } from '../_ui/as-written.ts'
import { Field } from '../_ui/field.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'

const t = words('library')

/** Longer than any name of a term. */
export const MOST_ASKED = 80

export const FindForm = ({ asked }: { asked: string | undefined }) => (
  <form className="filter" method="get" action="/glossary">
    <Field name="q" label={t('glossary.find')} hint={t('glossary.findHint')}>
      {(control) => <input {...control} type="search" maxLength={MOST_ASKED} defaultValue={asked} />}
    </Field>
    <div className="actions">
      <button className="button" type="submit">
        {t('glossary.show')}
      </button>
    </div>
  </form>
)

/** What goes by the name asked for: each leads to its place in the list below. */
export const Found = ({ terms, asked }: { terms: readonly GlossaryTerm[]; asked: string }) => (
  <Section id="found" title={t('glossary.found', { count: terms.length })}>
    {terms.length === 0 ? (
      <p>{t('glossary.nothing', { asked })}</p>
    ) : (
      <ul>
        {terms.map(({ id, term, definition }) => (
          <li key={id}>
            <a href={`#${id}`}>{term}</a>{' '}
            <span className="note" {...asWritten()}>
              {definition}
            </span>
          </li>
        ))}
      </ul>
    )}
  </Section>
)
