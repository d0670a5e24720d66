import type { Metadata } from 'next'
import { addressState, withdrawnEntry } from '#lib/db/entries.ts'
import { words } from '../_words/index.ts'
import { NOT_HERE, NotHere } from './not-here.tsx'
import { type PageKind, WithdrawnPage } from './withdrawn.tsx'

interface Asked {
  kind: PageKind
  slug: string
  revision?: number | undefined
}

/** The head of an entry's page that cannot be read: the title it had, or that nothing is here. */
export async function absentEntryHead({ kind, slug }: Asked): Promise<Metadata> {
  const gone = await withdrawnEntry(slug)
  return gone?.kind === kind
    ? {
        title: gone.erased ? words('pages')('entry.erasedTitle') : gone.title,
        robots: { index: false },
      }
    : NOT_HERE
}

/** What stands at the address of an entry that cannot be read; `path` leads to its newest revision. */
export async function AbsentEntry({ path, ...asked }: Asked & { path: string }) {
  const { kind, slug, revision } = asked
  const withdrawn = await WithdrawnPage({ slug, kind })
  if (withdrawn) return withdrawn
  const { latest, state } = await addressState(kind, slug, revision)
  if (latest === null || revision === undefined) return <NotHere />
  const link = (label: React.ReactNode) => <a href={path}>{label}</a>
  const why = state === 'gone' ? 'notFound.erased' : 'notFound.revision'
  return <NotHere lead={words('pages').rich(why, { revision, latest, link })} />
}
