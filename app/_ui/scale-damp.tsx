import type { ReactNode } from 'react'
import type { DAMP_STATES } from '#lib/entry/terms.ts'

export type DampStep = (typeof DAMP_STATES)[number]

/** A patch of coursed wall; what is dark on it is hatched, so that it prints in one ink. */
const Patch = ({ dark, children }: { dark?: string; children?: ReactNode }) => (
  <>
    <path className="draw-stone" d="M2 2H130V82H2Z" />
    {dark !== undefined && <path className="draw-damp" d={dark} />}
    <path
      className="draw-bed"
      d="M2 22H130M2 42H130M2 62H130M36 2V22M84 2V22M22 22V42M66 22V42M108 22V42M44 42V62M92 42V62M28 62V82M74 62V82"
    />
    {children}
  </>
)

/** A sheet of paper pressed on: what it takes up tells damp from wet. */
const PAPER = 'M48 26H86V64H48Z'
const ALL = hatch(2, 130, 2, 82)

/** Slanting strokes over a box. */
function hatch(left: number, right: number, top: number, bottom: number): string {
  const strokes: string[] = []
  for (let x = left - (bottom - top); x < right; x += 5) {
    const from = Math.max(x, left)
    const to = Math.min(x + (bottom - top), right)
    strokes.push(`M${from} ${bottom - (from - x)}L${to} ${bottom - (to - x)}`)
  }
  return strokes.join('')
}

/** The five steps of damp, on the same patch of wall. */
export const DAMP: Readonly<Record<DampStep, ReactNode>> = {
  dry: <Patch />,
  'slightly-damp': (
    <Patch dark={hatch(8, 40, 56, 80) + hatch(90, 118, 48, 72)}>
      <path className="draw-paper" d={PAPER} />
    </Patch>
  ),
  damp: (
    <Patch dark={hatch(2, 130, 36, 82)}>
      <path className="draw-tide" d="M2 36Q18 31 34 35T66 34T98 36T130 33" />
      <path className="draw-paper" d={PAPER} />
      <path className="draw-damp" d={hatch(54, 80, 48, 58)} />
    </Patch>
  ),
  wet: (
    <Patch dark={ALL}>
      <path className="draw-paper" d={PAPER} />
      <path className="draw-damp" d={hatch(52, 82, 30, 60)} />
    </Patch>
  ),
  running: (
    <Patch dark={ALL}>
      <path className="draw-water" d="M24 16V40M60 8V30M60 36V56M96 14V52M112 30V68M40 50V72M78 58V76" />
      <path
        className="draw-drop"
        d="M24 40q4 7 0 9q-4-2 0-9M60 56q4 7 0 9q-4-2 0-9M96 52q4 7 0 9q-4-2 0-9M112 68q4 7 0 9q-4-2 0-9M40 72q4 7 0 9q-4-2 0-9"
      />
    </Patch>
  ),
}
