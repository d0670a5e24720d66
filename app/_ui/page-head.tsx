import type { ReactNode } from 'react'

/** A page's title with the place it belongs to above it and a sentence below it. */
export function PageHead(props: {
  title: ReactNode
  kicker?: ReactNode
  lead?: ReactNode
  children?: ReactNode
}) {
  return (
    <header className="page-head">
      {props.kicker !== undefined && <p className="kicker">{props.kicker}</p>}
      <h1>{props.title}</h1>
      {props.lead !== undefined && <p className="lead">{props.lead}</p>}
      {props.children}
    </header>
  )
}
