import type write from '../_words/en/write.json'
import { words } from '../_words/index.ts'
import { LAYOUTS } from './layout.ts'
import type { FormView } from './view.ts'

const t = words('write')
export type StepWord = keyof typeof write.step

/** What a step is called. */
export const stepTitle = (step: string): string => t(`step.${step as StepWord}.title`)

/** The steps of a form: where one is, what is needed, what is to be mended. */
export function StepNav({ view, step }: { view: FormView; step: string }) {
  const steps = LAYOUTS[view.kind]
  return (
    <nav className="write-steps" aria-label={t('form.steps')}>
      <ol>
        {steps.map(({ id, needed }) => {
          const faulty = view.faults.some((fault) => fault.step === id && !fault.missing)
          const wanting = needed && view.faults.some((fault) => fault.step === id)
          const mark = faulty ? 'faulty' : wanting ? 'needed' : undefined
          return (
            <li key={id}>
              <a href={`/write/${view.draft.id}/${id}`} {...(id === step && { 'aria-current': 'step' })}>
                {stepTitle(id)}
                {mark && <span className="note"> {t(`form.${mark}`)}</span>}
              </a>
            </li>
          )
        })}
      </ol>
    </nav>
  )
}
