import type { ReactNode } from 'react'

/** What is wider than a narrow screen scrolls in a frame of its own, by touch and by keyboard. */
export const Frame = ({ label, children }: { label: string; children: ReactNode }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard
  <section className="table-frame" aria-label={label} tabIndex={0}>
    {children}
  </section>
)
