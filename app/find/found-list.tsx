import { content } from '#lib/content/index.ts'
import type { Term } from '#lib/content/types.ts'
import type { FoundPage } from '#lib/search/index.ts'
import { asWritten, inEnglish } from '../_ui/as-written.ts'
import { cautionWords } from '../_ui/caution-words.ts'
import { pageAddress } from '../_ui/find/page-address.ts'
import { WhyFound } from '../_ui/find/why.tsx'
import { guideWords } from '../_ui/guide-words.ts'
import { InventedMark } from '../_ui/invented.tsx'
import { nameOf, ownNames, termOf } from '../_ui/label.ts'
import { said } from '../_ui/said.tsx'
import { words } from '../_words/index.ts'

/** What was found, best first: what each is, where it leads and why it is there. */
export function FoundList({ pages }: { pages: readonly FoundPage[] }) {
  const t = words('find')
  if (pages.length === 0) return null
  return (
    <ul className="index">
      {pages.map((page) => (
        <li key={`${page.kind} ${page.id}`}>
          <div>
            <p className="kind">{t(`kindOne.${page.kind}`)}</p>
            <h2 className="index-title">
              <a href={pageAddress(page)} {...spoken(page).titleIn}>
                {spoken(page).title}
              </a>
            </h2>
            <p {...spoken(page).summaryIn}>{spoken(page).summary}</p>
            {page.invented && (
              <p className="facts-line">
                <InventedMark />
              </p>
            )}
          </div>
          <div className="index-side">
            <WhyFound why={page.why} />
          </div>
        </li>
      ))}
    </ul>
  )
}

type Lang = { lang?: 'en' | '' }

interface Spoken {
  readonly title: string
  readonly titleIn?: Lang
  readonly summary: string
  readonly summaryIn?: Lang
}

/** What a page is called and says of itself, and the language of each where it is not the reader's. */
function spoken({ kind, id, entry, title, summary }: FoundPage): Spoken {
  if (entry) return { title, titleIn: asWritten(), summary, summaryIn: asWritten() }
  const { cautions, glossary, guides, materials } = content()
  const caution = kind === 'caution' ? cautions.get(id) : undefined
  const guide = kind === 'guide' ? guides.get(id) : undefined
  if (caution) return { title: cautionWords(caution).title, summary: cautionWords(caution).notice }
  if (guide) return guideWords(guide)
  const term = kind === 'term' ? glossary.get(id) : termFound(kind, id)
  const names = term?.labels ?? (kind === 'material' ? materials.get(id)?.names : undefined)
  return {
    title: nameOf(title, names),
    ...(ownNames(names) === undefined && { titleIn: inEnglish() }),
    summary: (term && said(term, 'definition')) ?? summary,
    ...(term?.es === undefined && { summaryIn: inEnglish() }),
  }
}

function termFound(kind: FoundPage['kind'], id: string): Term | undefined {
  if (kind === 'unit') return termOf('units', id)
  const [vocabulary = '', term = ''] = id.split('#')
  return kind === 'vocabulary' ? termOf(vocabulary, term) : undefined
}
