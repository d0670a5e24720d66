import type { ReactNode } from 'react'
import type { JOINT_STATES } from '#lib/entry/terms.ts'

export type JointStep = (typeof JOINT_STATES)[number]

/** Two stones cut through, weather on the left: their faces stand at 34, the joint between 33 and 51. */
const Stones = () => (
  <path
    className="draw-stone"
    d="M132 2H42Q34 2 34 9V27Q34 33 41 33H132ZM132 82H42Q34 82 34 75V57Q34 51 41 51H132Z"
  />
)

/** Where the face first was, and five millimetres behind it. */
const Gauge = () => <path className="draw-gauge" d="M36 24V60M50 24V60" />

const Joint = ({ mortar, children }: { mortar: string; children?: ReactNode }) => (
  <>
    <Stones />
    <path className="draw-mortar" d={mortar} />
    <Gauge />
    {children}
  </>
)

const FULL = 'M132 33.500H41L36 36V48L41 50.500H132Z'

/** The five steps of the joint, in section. */
export const JOINT: Readonly<Record<JointStep, ReactNode>> = {
  sound: <Joint mortar={FULL} />,
  'fine-cracks': (
    <Joint mortar={FULL}>
      <path
        className="draw-crack"
        d="M37 36Q58 33 82 34.500M62 34.500L65 39L63 43L67 50M96 34L94 40L98 45L97 50"
      />
    </Joint>
  ),
  worn: (
    <Joint mortar="M132 33.500H42L46 37L44.500 41L47 45L43 50.500H132Z">
      <path className="draw-grain" d="M30 58h1.500M26 66h1.500M31 72h1.500M22 76h1.500M28 79h1.500" />
    </Joint>
  ),
  open: (
    <Joint mortar="M132 36H92L74 37L60 40L64 44L58 47L66 50.500H132Z">
      <path className="draw-blade" d="M2 31L30 33L88 35.500L30 37L2 37Z" />
    </Joint>
  ),
  lost: (
    <Joint mortar="M132 33.500H112L106 38L109 42L103 46L110 50.500H132Z">
      <path className="draw-grain" d="M60 49h2M72 49.500h3M84 49h2M28 78h2M22 80h3M31 81h2" />
      <path className="draw-gauge" d="M36 42H104M42 39L36 42L42 45M98 39L104 42L98 45" />
    </Joint>
  ),
}
