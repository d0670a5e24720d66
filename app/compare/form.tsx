import { content } from '#lib/content/index.ts'
import { LIME_STATES, type LimeState, STANDINGS, type Standing, USES, type Use } from '#lib/entry/terms.ts'
import { SelectField } from '../_ui/field.tsx'
import { labelOf } from '../_ui/label.ts'
import { words } from '../_words/index.ts'

const t = words('library')

/** What to draw. A plain GET form: the address is the choice. */
export function CompareForm(props: {
  use: Use | undefined
  standing: Standing | undefined
  state: LimeState
}) {
  const rows = [...content().rows.values()]
  return (
    <form className="filter" method="get" action="/compare">
      <div className="form-grid">
        <SelectField
          name="use"
          label={t('compare.use')}
          any={t('compare.anyUse')}
          {...(props.use && { value: props.use })}
          options={USES.filter((use) => rows.some(({ uses }) => uses.includes(use))).map((use) => ({
            value: use,
            label: labelOf('uses', use),
          }))}
        />
        <SelectField
          name="state"
          label={t('compare.state')}
          value={props.state}
          options={LIME_STATES.map((state) => ({ value: state, label: labelOf('measured-states', state) }))}
        />
        <SelectField
          name="standing"
          label={t('compare.standing')}
          any={t('compare.anyStanding')}
          {...(props.standing && { value: props.standing })}
          options={STANDINGS.map((one) => ({ value: one, label: labelOf('standings', one) }))}
        />
      </div>
      <div className="actions">
        <button className="button" type="submit">
          {t('compare.show')}
        </button>
        <a className="touch" href="/compare">
          {t('compare.clear')}
        </a>
      </div>
    </form>
  )
}
