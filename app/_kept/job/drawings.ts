import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { jointSays } from '../../_ui/drawings/joint-section.tsx'
import { faceSays } from '../../_ui/drawings/wall-face.tsx'
import { drawnWork } from '../../_ui/drawings/work-numbers.ts'
import { words } from '../../_words/index.ts'
import { ofWork } from '../../recipes/[slug]/job/labels.ts'
import { worksAsked } from '../../recipes/[slug]/job/work-drawn.tsx'
import type { Job } from './job.ts'

/** The joints and the faces of the works. */
export function drawingsOf({ inputs }: Job): KeptBlock[] {
  const t = words('workOut')
  const { system } = inputs
  const works = worksAsked(inputs)
  return works.flatMap((work, k): KeptBlock[] => {
    const { joint, face } = drawnWork(work)
    const title = (text: string) => ofWork(k + 1, works.length > 1, text)
    return [
      ...(joint
        ? [
            {
              kind: 'drawing' as const,
              name: `joint-${k + 1}`,
              title: title(t('drawings.joint.title')),
              says: jointSays({ ...joint, system }),
              drawn: { of: 'joint' as const, system, depthMm: joint.depthMm, jointMm: joint.jointMm },
            },
          ]
        : []),
      ...(face
        ? [
            {
              kind: 'drawing' as const,
              name: `face-${k + 1}`,
              title: title(t('drawings.face.title')),
              says: faceSays({ ...face, system }),
              drawn: { of: 'face' as const, system, ...face },
            },
          ]
        : []),
    ]
  })
}
