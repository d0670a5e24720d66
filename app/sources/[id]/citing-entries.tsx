import type { Citing } from '#lib/db/citations.ts'
import { asWritten } from '../../_ui/as-written.ts'
import { InventedMark } from '../../_ui/invented.tsx'

/** Entries of the record that cite a source, each with the place in it. */
export const CitingEntries = ({ entries }: { entries: readonly Citing[] }) => (
  <ul>
    {entries.map((entry) => (
      <li key={`${entry.kind}-${entry.slug}-${entry.locator}`}>
        <a href={`/${entry.kind}s/${entry.slug}`} {...asWritten()}>
          {entry.title}
        </a>
        {entry.locator !== null && `, ${entry.locator}`} {entry.invented && <InventedMark />}
      </li>
    ))}
  </ul>
)
