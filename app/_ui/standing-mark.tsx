import type { Standing } from '#lib/entry/terms.ts'
import { labelOf } from './label.ts'

const SHAPES = {
  'in-use': <circle cx="6" cy="6" r="4.5" fill="currentColor" />,
  'historical-only': <circle cx="6" cy="6" r="4.5" fill="none" stroke="currentColor" strokeWidth="1.75" />,
  'known-hazard': <path d="M6 0.5 12 11.5H0Z" fill="currentColor" />,
} as const satisfies Record<Standing, unknown>

/** What a row or recipe may be taken for, in a shape and in words. */
export const StandingMark = ({ standing }: { standing: Standing }) => (
  <span className={`standing standing-${standing}`}>
    <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      {SHAPES[standing]}
    </svg>
    {labelOf('standings', standing)}
  </span>
)
