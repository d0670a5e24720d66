import { words } from '../../_words/index.ts'
import { JOINT_BOX, type JointNumbers, jointGeometry } from './joint-geometry.ts'
import { lengthText, type System } from './lengths.ts'

interface Props extends JointNumbers {
  readonly system: System
}

/** Two units cut through with the joint between them, weather on the left, its depth and width to scale. */
export function JointSection({ depthMm, jointMm, system }: Props) {
  const { joint, depth, height } = jointGeometry({ depthMm, jointMm })
  const { width, face, right, top } = JOINT_BOX
  const bottom = height - JOINT_BOX.below
  const line = bottom + 8
  const ranged = depthMm.low < depthMm.high
  return (
    <svg
      className="drawn"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      aria-hidden="true"
    >
      <path className="drawn-back" d={`M${face} ${joint.top}H${right}V${joint.bottom}H${face}Z`} />
      <path className="drawn-mortar" d={`M${face} ${joint.top}H${depth.typical}V${joint.bottom}H${face}Z`} />
      <path
        className="drawn-stone"
        d={`M${face} ${top}H${right}V${joint.top}H${face}ZM${face} ${joint.bottom}H${right}V${bottom}H${face}Z`}
      />
      {ranged && (
        <path
          className="drawn-limit"
          d={`M${depth.low} ${joint.top - 8}V${joint.bottom + 8}M${depth.high} ${joint.top - 8}V${joint.bottom + 8}`}
        />
      )}
      <path
        className="drawn-line"
        d={`M${face} ${line - 4}V${line + 4}M${face} ${line}H${depth.typical}M${depth.typical} ${line - 4}V${line + 4}`}
      />
      <text x={face} y={height - 4}>
        {lengthText(depthMm, system)}
      </text>
      {jointMm !== null && (
        <>
          <path
            className="drawn-line"
            d={`M${face - 10} ${joint.top}H${face - 2}M${face - 6} ${joint.top}V${joint.bottom}M${face - 10} ${joint.bottom}H${face - 2}`}
          />
          <text x={face - 12} y={(joint.top + joint.bottom) / 2 + 5} textAnchor="end">
            {lengthText(jointMm.typical, system)}
          </text>
        </>
      )}
    </svg>
  )
}

/** The same in words. `bed`: the mortar fills the whole bed rather than the front of a joint. */
export function jointSays({ depthMm, jointMm, system, bed }: Props & { bed: boolean }): string {
  const t = words('workOut')
  return [
    t(bed ? 'drawings.joint.saysBed' : 'drawings.joint.says', { depth: lengthText(depthMm, system) }),
    jointMm === null
      ? t('drawings.joint.free')
      : t('drawings.joint.width', { width: lengthText(jointMm, system) }),
    ...(depthMm.low < depthMm.high ? [t('drawings.joint.range')] : []),
  ].join(' ')
}
