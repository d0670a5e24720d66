import type { GlossaryTerm } from '#lib/content/types.ts'
import { Field } from '../_ui/field.tsx'
import { Said } from '../_ui/said.tsx'
import { Section } from '../_ui/section.tsx'
import { Name } from '../_ui/term-name.tsx'
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
        {terms.map((term) => (
          <li key={term.id}>
            <a href={`#${term.id}`}>
              <Name label={term.term} labels={term.labels} />
            </a>{' '}
            <span className="note">
              <Said of={term} field="definition" />
            </span>
          </li>
        ))}
      </ul>
    )}
  </Section>
)
