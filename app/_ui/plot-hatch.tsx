/** The hatchings of one drawing, from none to dense; ids carry the drawing's own name. */
export const hatchId = (plot: string, hatch: number) => `${plot}-hatch-${hatch}`

const LINES = [
  '',
  'M-2 2L2 -2M0 8L8 0M6 10L10 6',
  'M-2 6L2 10M0 0L8 8M6 -2L10 2',
  'M0 2H8M0 6H8',
  'M2 0V8M6 0V8',
  'M0 0L8 8M0 8L8 0',
  'M4 3V5M0 7V8M0 0V1M8 7V8M8 0V1',
  'M0 4H8M4 0V8',
  '',
] as const

/** @param props.of which hatchings are used, each by its number */
export const Hatchings = ({ plot, of, name }: { plot: string; of: readonly number[]; name?: string }) => (
  <defs>
    {of.map((hatch) => (
      <pattern
        key={hatch}
        id={hatchId(plot, hatch)}
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        className={`plot-hatch ${name ?? 'plot-share'}-${hatch}`}
      >
        <rect className="plot-ground" width="8" height="8" />
        <path className="plot-lines" d={LINES[hatch] ?? ''} />
      </pattern>
    ))}
  </defs>
)
