import type { Found } from '#lib/search/index.ts'
import { CaseIndex } from '../../../_ui/case-index.tsx'
import { Section } from '../../../_ui/section.tsx'
import { words } from '../../../_words/index.ts'

/** The cases that have a term, the longest watched first, and the way to all of them. */
export function TermCases({ found: { results, total }, href }: { found: Found; href: string }) {
  const t = words('find')
  return (
    <Section id="cases" title={t('term.cases')} note={t('term.casesNote')}>
      {total === 0 ? <p>{t('term.noCases')}</p> : <CaseIndex cases={results} head="h3" />}
      {total > 0 && (
        <p>
          <a className="touch" href={href}>
            {t('term.allCases', { count: total })}
          </a>
        </p>
      )}
    </Section>
  )
}
