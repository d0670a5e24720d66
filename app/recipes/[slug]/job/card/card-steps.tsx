import type { SequenceId, SequenceStep } from '#lib/mortar/sequence.ts'
import { words } from '../../../../_words/index.ts'
import { Lasting } from '../guidance.tsx'

/** Steps of the sheet that are for the wall, not for the mixer. */
const AT_THE_WALL: ReadonlySet<SequenceId> = new Set(['wet-wall', 'place', 'pour', 'protect-work'])

/** The making alone. */
export const stepsAtMixer = (steps: readonly SequenceStep[]): SequenceStep[] =>
  steps.filter(({ id }) => !AT_THE_WALL.has(id))

/** The making in its order, from the eyewash (step 0) on. */
export function CardSteps({ steps }: { steps: readonly SequenceStep[] }) {
  const t = words('job')
  return (
    <section className="card-steps" aria-labelledby="card-steps">
      <h3 id="card-steps">{t('sheet.sequence')}</h3>
      <ol start={0}>
        {steps.map(({ id, hours }, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step may come twice, and the list never changes
          <li key={`${place} ${id}`}>
            {t(`sequence.${id}`)} {hours && <Lasting hours={hours} />}
          </li>
        ))}
      </ol>
    </section>
  )
}
