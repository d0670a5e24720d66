import { Fragment } from 'react'
import type { Work } from '#lib/mortar/takeoff.ts'
import { Drawing } from '../../../_ui/drawings/drawing.tsx'
import { JointSection, jointSays } from '../../../_ui/drawings/joint-section.tsx'
import { faceSays, WallFace } from '../../../_ui/drawings/wall-face.tsx'
import { drawnWork } from '../../../_ui/drawings/work-numbers.ts'
import type { System } from '../../../_ui/systems.ts'
import { words } from '../../../_words/index.ts'
import { ofWork } from './labels.ts'
import type { Inputs } from './read-inputs.ts'

/** The works that a sheet was asked for, in their order. */
export const worksAsked = ({ request }: Inputs): Work[] =>
  request ? [request.work, ...(request.furtherWorks ?? []).map(({ work }) => work)] : []

/** The joints and the faces of the works, to scale. On paper they come with the working, on its pages. */
export function WorksDrawn({
  works,
  system,
  printed,
}: {
  works: readonly Work[]
  system: System
  printed: boolean
}) {
  const t = words('workOut')
  const drawn = works.map((work, k) => ({ ...drawnWork(work), number: k + 1 }))
  const shown = drawn.filter(({ joint, face }) => joint || face)
  if (shown.length === 0) return null
  const title = (number: number, text: string) => ofWork(number, works.length > 1, text)
  return (
    <div className={printed ? 'job-drawn drawings' : 'job-drawn drawings screen-only'}>
      {shown.map(({ number, joint, face }) => (
        <Fragment key={number}>
          {joint && (
            <Drawing title={title(number, t('drawings.joint.title'))} says={jointSays({ ...joint, system })}>
              <JointSection {...joint} system={system} />
            </Drawing>
          )}
          {face && (
            <Drawing title={title(number, t('drawings.face.title'))} says={faceSays({ ...face, system })}>
              <WallFace {...face} system={system} />
            </Drawing>
          )}
        </Fragment>
      ))}
    </div>
  )
}
