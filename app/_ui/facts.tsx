import type { ReactNode } from 'react'

/** Named facts, one a line, in the order given. What is absent is left out. */
export function Facts({ facts }: { facts: Readonly<Record<string, ReactNode>> }) {
  return (
    <dl className="facts">
      {Object.entries(facts)
        .filter(([, value]) => value !== undefined && value !== null)
        .map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
    </dl>
  )
}
