import type { ReactNode } from 'react'

/** A section with its head in the margin where there is room for one. */
export function Section(props: { id: string; title: ReactNode; note?: ReactNode; children: ReactNode }) {
  const head = `${props.id}-head`
  return (
    <section className="section" id={props.id} aria-labelledby={head}>
      <div>
        <h2 id={head}>{props.title}</h2>
        {props.note !== undefined && <p className="section-note">{props.note}</p>}
      </div>
      <div className="section-body">{props.children}</div>
    </section>
  )
}
