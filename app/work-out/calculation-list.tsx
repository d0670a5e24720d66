import { pathOf } from '../_ui/workshop/bench-page.tsx'
import { words } from '../_words/index.ts'
import { CALCULATIONS } from './calculations.ts'

/** Every calculation, with what it is for. */
export function CalculationList() {
  const t = words('workOut')
  return (
    <section aria-labelledby="calculations">
      <h2 id="calculations">{t('list')}</h2>
      <dl className="facts">
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
    </section>
  )
}
