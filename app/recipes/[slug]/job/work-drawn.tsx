import type { Work } from '#lib/mortar/takeoff.ts'
import { Drawing } from '../../../_ui/drawings/drawing.tsx'
import { JointSection, jointSays } from '../../../_ui/drawings/joint-section.tsx'
import { faceSays, WallFace } from '../../../_ui/drawings/wall-face.tsx'
import { drawnWork } from '../../../_ui/drawings/work-numbers.ts'
import { words } from '../../../_words/index.ts'
import type { System } from './fields.ts'

/** The joint and the face of the work, to scale. On paper they come with the working, on its pages. */
export function WorkDrawn({ work, system, printed }: { work: Work; system: System; printed: boolean }) {
  const t = words('workOut')
  const { joint, face } = drawnWork(work)
  if (!joint && !face) return null
  return (
    <div className={printed ? 'job-drawn drawings' : 'job-drawn drawings screen-only'}>
      {joint && (
        <Drawing title={t('drawings.joint.title')} says={jointSays({ ...joint, system })}>
          <JointSection {...joint} system={system} />
        </Drawing>
      )}
      {face && (
        <Drawing title={t('drawings.face.title')} says={faceSays({ ...face, system })}>
          <WallFace {...face} system={system} />
        </Drawing>
      )}
    </div>
  )
}
