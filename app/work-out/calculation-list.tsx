import { Section } from '../_ui/section.tsx'
import { pathOf } from '../_ui/workshop/bench-page.tsx'
import { words } from '../_words/index.ts'
import { CALCULATIONS } from './calculations.ts'

/** Every calculation, with what it is for. */
export function CalculationList() {
  const t = words('workOut')
  return (
    <Section id="calculations" title={t('list')}>
      <dl className="facts facts-named">
        {Object.values(CALCULATIONS).map((of) => (
          <div key={of.page}>
            <dt>
              <a className="touch" href={pathOf(of)}>
                {t(`${of.page}.title`)}
              </a>
            </dt>
            <dd className="note">{t(`${of.page}.lead`)}</dd>
          </div>
        ))}
      </dl>
    </Section>
  )
}
