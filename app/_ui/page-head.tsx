import type { ReactNode } from 'react'
import { asWritten } from './as-written.ts'

/** A page's title with the place it belongs to above it and a sentence below it. */
export function PageHead(props: {
  title: ReactNode
  kicker?: ReactNode
  lead?: ReactNode
  /** Title and lead are words that somebody wrote for the record. */
  written?: boolean
  children?: ReactNode
}) {
  const lang = props.written === true ? asWritten() : {}
  return (
    <header className="page-head">
      {props.kicker !== undefined && <p className="kicker">{props.kicker}</p>}
      <h1 {...lang}>{props.title}</h1>
      {props.lead !== undefined && (
        <p className="lead" {...lang}>
          {props.lead}
        </p>
      )}
      {props.children}
    </header>
  )
}
