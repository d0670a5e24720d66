import { content } from '#lib/content/index.ts'
import type { Term } from '#lib/content/types.ts'
import { Facts } from '../../../_ui/facts.tsx'
import { labelOf, otherNames } from '../../../_ui/label.ts'
import { lackingIn, NamesElsewhere } from '../../../_ui/names-elsewhere.tsx'
import { said } from '../../../_ui/said.tsx'
import { Section } from '../../../_ui/section.tsx'
import { SourceText } from '../../../_ui/source-mark.tsx'
import { words } from '../../../_words/index.ts'

const t = words('find')

/** Where a term stands among its like, and what it is called. */
export function TermFacts({ vocabulary, term }: { vocabulary: string; term: Term }) {
  const terms = [...(content().vocabularies.get(vocabulary)?.values() ?? [])]
  const kinds = terms.filter(({ broader }) => broader === term.id)
  const lacking = lackingIn(term.labels)
  return (
    <Section id="names" title={t('term.what')}>
      <Facts
        facts={{
          [t('term.kindOf')]: term.broader && <TermLink vocabulary={vocabulary} id={term.broader} />,
          [t('term.kinds')]:
            kinds.length === 0 ? undefined : (
              <ul className="plain-list">
                {kinds.map(({ id }) => (
                  <li key={id}>
                    <TermLink vocabulary={vocabulary} id={id} />
                  </li>
                ))}
              </ul>
            ),
          [t('term.also')]: otherNames(term.also, term.labels).join(', ') || undefined,
          [t('term.names')]: (
            <>
              <NamesElsewhere english={[term.label, ...(term.also ?? [])]} names={term.labels} />
              {lacking !== undefined && (
                <p className="note">{words('library')('term.lacking', { languages: lacking })}</p>
              )}
            </>
          ),
          [t('term.definition')]: term.source && <SourceText text={term.source} />,
          [t('term.inList')]: (
            <a href={`/terms/${vocabulary}#${term.id}`}>
              {said(content().vocabularyHeads.get(vocabulary) ?? {}, 'title')}
            </a>
          ),
        }}
      />
    </Section>
  )
}

const TermLink = ({ vocabulary, id }: { vocabulary: string; id: string }) => (
  <a href={`/terms/${vocabulary}/${id}`}>{labelOf(vocabulary, id)}</a>
)
