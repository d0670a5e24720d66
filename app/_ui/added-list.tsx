import type { LibrarySummary } from '#lib/db/library.ts'
import { words } from '../_words/index.ts'
import { asWritten } from './as-written.ts'
import { InventedMark } from './invented.tsx'

/** Published materials, sources or rows that contributors added, one a line. */
export const AddedList = ({ entries }: { entries: readonly LibrarySummary[] }) => (
  <ul className="index">
    {entries.map(({ kind, slug, title, summary, invented }) => (
      <li key={slug}>
        <div>
          <h3 className="index-title">
            <a href={`/${kind}s/${slug}`} {...asWritten()}>
              {title}
            </a>
          </h3>
          {summary !== '' && <p {...asWritten()}>{summary}</p>}
        </div>
        <p className="index-side">
          {words('added')('mark')}
          {invented && (
            <>
              <br />
              <InventedMark />
            </>
          )}
        </p>
      </li>
    ))}
  </ul>
)
