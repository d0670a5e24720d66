import type { ReactNode } from 'react'

/** What a narrow screen folds away: there it is opened by touch or key; with room for it, and on paper, it stands open. */
export const Fold = ({ summary, children }: { summary: ReactNode; children: ReactNode }) => (
  <details className="fold">
    <summary>{summary}</summary>
    {children}
  </details>
)
