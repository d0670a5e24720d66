import type { ReactNode } from 'react'

/**
 * What is wider than a narrow screen scrolls in a frame of its own, by touch and by keyboard. A group and no landmark:
 * a page may hold dozens, and many are named as the section they stand in.
 */
export const Frame = ({ label, children }: { label: string; children: ReactNode }) => (
  // biome-ignore lint/a11y/useSemanticElements: a fieldset is for the fields of a form
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard
  <div role="group" className="table-frame" aria-label={label} tabIndex={0}>
    {children}
  </div>
)
