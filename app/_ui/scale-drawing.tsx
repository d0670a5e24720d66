import { words } from '../_words/index.ts'
import { DAMP, type DampStep } from './scale-damp.tsx'
import { JOINT, type JointStep } from './scale-joint.tsx'
import { UNIT, type UnitStep } from './scale-unit.tsx'
import { SCALES } from './states.tsx'

const DRAWINGS = { joint: JOINT, unit: UNIT, damp: DAMP }

const scaleOf = (vocabulary: string) => SCALES.find((scale) => scale.vocabulary === vocabulary)

/** Is there a drawing for each state of this vocabulary? */
export const isDrawn = (vocabulary: string): boolean => scaleOf(vocabulary) !== undefined

/** One step of the joint, stone or damp scale, drawn so that two people would call a wall the same. */
export function ScaleDrawing({ vocabulary, state }: { vocabulary: string; state: string }) {
  const scale = scaleOf(vocabulary)
  const step: string | undefined = scale?.states.find((one) => one === state)
  if (!scale || step === undefined) return null
  const key = `${scale.key}.${step}` as `joint.${JointStep}` | `unit.${UnitStep}` | `damp.${DampStep}`
  const drawings: Readonly<Record<string, React.ReactNode>> = DRAWINGS[scale.key]
  return (
    <svg
      className="scale-drawing"
      viewBox="0 0 132 84"
      width="132"
      height="84"
      role="img"
      aria-label={words('library')(`scale.${key}`)}
    >
      {drawings[step]}
    </svg>
  )
}
