import type { Drawn } from '#lib/entry/kept-drawn.ts'
import { Composition } from '../_ui/drawings/composition.tsx'
import { JointSection } from '../_ui/drawings/joint-section.tsx'
import { SlakeCourse } from '../_ui/drawings/slake-course.tsx'
import { WallFace } from '../_ui/drawings/wall-face.tsx'
import { GradingChart } from '../work-out/sieve/chart.tsx'
import '../work-out/sieve/chart.css'

/** What a kept sheet drew, drawn again from its numbers by what drew it first. */
export function KeptDrawing({ drawn }: { drawn: Drawn }) {
  switch (drawn.of) {
    case 'joint':
      return <JointSection {...drawn} />
    case 'face':
      return <WallFace {...drawn} />
    case 'slake':
      return <SlakeCourse {...drawn} />
    case 'grading':
      return <GradingChart {...drawn} />
    case 'composition':
      return (
        <Composition
          lines={drawn.lines}
          stateLabel={(state) => drawn.states[state] ?? state}
          materialLabel={(material) => drawn.materials[material] ?? material}
        />
      )
  }
}
