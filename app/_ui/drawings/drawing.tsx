import type { ReactNode } from 'react'

/** A drawing with its name and the same in words. The drawing itself is hidden from readers of the words. */
export const Drawing = ({ title, says, children }: { title: string; says: string; children: ReactNode }) => (
  <figure className="drawing">
    <figcaption>
      <strong>{title}.</strong> {says}
    </figcaption>
    {children}
  </figure>
)
