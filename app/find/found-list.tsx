import { content } from '#lib/content/index.ts'
import type { FoundPage } from '#lib/search/index.ts'
import { asWritten } from '../_ui/as-written.ts'
import { cautionWords } from '../_ui/caution-words.ts'
import { pageAddress } from '../_ui/find/page-address.ts'
import { WhyFound } from '../_ui/find/why.tsx'
import { guideWords } from '../_ui/guide-words.ts'
import { InventedMark } from '../_ui/invented.tsx'
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
              <a href={pageAddress(page)} {...said(page).lang}>
                {said(page).title}
              </a>
            </h2>
            <p {...said(page).lang}>{said(page).summary}</p>
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

/** What a page is called and says of itself; a caution and a guide do so in the reader's language. */
function said({ kind, id, title, summary }: FoundPage) {
  const caution = kind === 'caution' ? content().cautions.get(id) : undefined
  const guide = kind === 'guide' ? content().guides.get(id) : undefined
  if (caution) return { title: cautionWords(caution).title, summary: cautionWords(caution).notice, lang: {} }
  if (guide) return { ...guideWords(guide), lang: {} }
  return { title, summary, lang: asWritten() }
}
