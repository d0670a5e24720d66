import {
  DAMP_STATES,
  type DampState,
  JOINT_STATES,
  type JointState,
  UNIT_STATES,
  type UnitState,
} from '#lib/entry/terms.ts'
import { words } from '../_words/index.ts'
import { labelOf } from './label.ts'

export interface States {
  readonly joint: JointState
  readonly unit: UnitState
  readonly damp: DampState
}

/** The three scales, each with its list, its vocabulary and its colour class. */
export const SCALES = [
  { key: 'joint', states: JOINT_STATES, vocabulary: 'joint-states', fill: 'strip-fill' },
  { key: 'unit', states: UNIT_STATES, vocabulary: 'unit-states', fill: 'strip-fill strip-fill-unit' },
  { key: 'damp', states: DAMP_STATES, vocabulary: 'damp-states', fill: 'strip-fill strip-fill-damp' },
] as const

/** How far down its scale a state is: 0 for the best, 4 for the worst. */
export function stepOf(scale: (typeof SCALES)[number], states: States): number {
  const list: readonly string[] = scale.states
  return list.indexOf(states[scale.key])
}

/** A state as a small box that fills as it worsens, and its word. */
export const StateMark = ({ scale, states }: { scale: (typeof SCALES)[number]; states: States }) => (
  <span className="state-mark">
    <svg className="step-mark" viewBox="0 0 25 14" aria-hidden="true">
      <StepBoxes step={stepOf(scale, states)} fill={scale.fill} />
    </svg>
    {labelOf(scale.vocabulary, states[scale.key])}
  </span>
)

const BOXES = [0, 1, 2, 3] as const

const StepBoxes = ({ step, fill }: { step: number; fill: string }) =>
  BOXES.map((box) => (
    <rect
      key={box}
      className={box < step ? fill : 'strip-box'}
      x={box * 6 + 0.5}
      y={11 - box * 2.5}
      width="5"
      height={2.5 + box * 2.5}
    />
  ))

/** Joint, stone and damp in one line of words and marks; joint and stone always together. */
export function StatesLine({ states }: { states: States }) {
  const t = words('pages')
  return (
    <ul className="plain-list">
      {SCALES.map((scale) => (
        <li key={scale.key} className="state-line">
          <span className="label">{t(`states.${scale.key}`)}</span>
          <StateMark scale={scale} states={states} />
        </li>
      ))}
    </ul>
  )
}
