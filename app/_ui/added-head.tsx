import type { ReactNode } from 'react'
import { words } from '../_words/index.ts'
import { DisputedNotice } from './disputed.tsx'
import { InventedNotice } from './invented.tsx'
import { PageHead } from './page-head.tsx'
import { type EntryPath, Superseded } from './superseded.tsx'
import { WriteLinks } from './write-links.tsx'
import { Written } from './written.tsx'

/** The head of a material, source or row that a contributor added. */
export const AddedHead = (props: {
  title: string
  kicker: ReactNode
  lead: ReactNode
  path: EntryPath
  entry: {
    readonly slug: string
    readonly entryId: string
    readonly revision: number
    readonly latest: number
  }
  invented: boolean
  children?: ReactNode
}) => (
  <PageHead title={<Written>{props.title}</Written>} kicker={props.kicker} lead={props.lead}>
    <p className="facts-line">{words('added')('revised')}</p>
    {props.invented && <InventedNotice page="one" />}
    <Superseded path={props.path} entry={props.entry} />
    <DisputedNotice entry={props.entry} />
    <WriteLinks kind="added" slug={props.entry.slug} />
    {props.children}
  </PageHead>
)
