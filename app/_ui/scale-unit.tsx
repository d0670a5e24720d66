import type { ReactNode } from 'react'
import type { UNIT_STATES } from '#lib/entry/terms.ts'

export type UnitStep = (typeof UNIT_STATES)[number]

const FACE = 'M3 12H85V72H3Z'
/** The strokes of the tool across the face. */
const TOOLING =
  'M10 22l8-6M24 24l10-8M40 22l8-6M54 24l10-8M70 22l8-6M10 40l8-6M26 42l10-8M42 40l8-6M56 42l10-8M72 40l8-6M12 58l8-6M26 60l10-8M42 58l8-6M56 60l10-8M72 58l8-6'
/** The same with the strokes gone where the surface has gone. */
const TOOLING_LEFT = 'M10 22l8-6M24 24l10-8M72 40l8-6M12 58l8-6M26 60l10-8M72 58l8-6'

/** The face of a stone, and beside it the same stone cut through between its joints, weather on the left. */
const Stone = ({
  section,
  tooling,
  children,
}: {
  section: string
  tooling?: string
  children?: ReactNode
}) => (
  <>
    <path className="draw-mortar" d="M104 4H132V12H104ZM104 72H132V80H104Z" />
    <path className="draw-stone" d={FACE} />
    {tooling !== undefined && <path className="draw-tool" d={tooling} />}
    <path className="draw-stone" d={section} />
    <path className="draw-gauge" d="M104 1V83" />
    {children}
  </>
)

/** The five steps of the stone, brick or earth. */
export const UNIT: Readonly<Record<UnitStep, ReactNode>> = {
  sound: <Stone section="M132 12H104V72H132Z" tooling={TOOLING} />,
  powdering: (
    <Stone section="M132 12H104L105 22L104 30L105.500 42L104 54L105 64L104 72H132Z" tooling={TOOLING}>
      <path
        className="draw-grain"
        d="M14 76h2M22 78h2M27 76h2M35 79h2M41 77h2M50 78h2M58 76h2M63 79h2M72 77h2M98 60h1.500M97 70h1.500M99 78h1.500M95 79h1.500"
      />
    </Stone>
  ),
  scaling: (
    <Stone section="M132 12H104V24L110 26V44L108 46H104V72H132Z" tooling={TOOLING_LEFT}>
      <path className="draw-loss" d="M34 20L58 16L68 24L64 44L48 50L36 42Z" />
      <path className="draw-crack" d="M36 42L42 36L52 40L64 44M100 46L104 58L104 46" />
      <path className="draw-flake" d="M99 30L103 26L103 40L100 43Z" />
    </Stone>
  ),
  hollowing: (
    <Stone section="M132 12H106Q120 24 118 42T106 72H132Z">
      <path className="draw-loss" d="M10 18Q44 12 78 20Q82 42 76 64Q44 70 12 64Q6 42 10 18Z" />
      <path className="draw-loss" d="M20 26Q44 20 68 28Q72 42 66 56Q44 62 22 56Q16 42 20 26Z" />
    </Stone>
  ),
  broken: (
    <Stone
      section="M132 12H104V46L112 52L108 60L116 72H132Z"
      tooling="M10 22l8-6M40 22l8-6M70 22l8-6M26 42l10-8M12 58l8-6"
    >
      <path className="draw-crack draw-crack-wide" d="M38 12L44 24L40 34L52 46L49 58" />
      <path className="draw-air" d="M49 58L60 50L70 54L76 44L86 42V73H46Z" />
      <path className="draw-edge" d="M46 72L49 58L60 50L70 54L76 44L85 42" />
    </Stone>
  ),
}
