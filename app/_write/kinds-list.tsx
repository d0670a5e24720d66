import { addressWith } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'

const t = words('write')

const KINDS = ['case', 'recipe', 'material', 'source', 'row'] as const

/** What one may begin to write. */
export function KindsList() {
  return (
    <Section id="new" title={t('begin.new')}>
      <ul className="index">
        {KINDS.map((kind) => (
          <li key={kind}>
            <div>
              <h3 className="index-title">
                <a href={addressWith('/write/new', { kind })}>{t(`begin.kind.${kind}`)}</a>
              </h3>
              <p>{t(`begin.about.${kind}`)}</p>
            </div>
          </li>
        ))}
        <li>
          <div>
            <h3 className="index-title">
              <a href="/cases">{t('begin.kind.visit')}</a>
            </h3>
            <p>{t('begin.about.visit')}</p>
          </div>
        </li>
      </ul>
    </Section>
  )
}
