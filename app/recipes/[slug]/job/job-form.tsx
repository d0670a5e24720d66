import type { RecipeBody } from '#lib/entry/recipe.ts'
import { LIME_STATES } from '#lib/entry/terms.ts'
import { MOST_WORKS } from '#lib/mortar/job-works.ts'
import { Field, SelectField } from '../../../_ui/field.tsx'
import { labelOf } from '../../../_ui/label.ts'
import { SYSTEMS } from '../../../_ui/systems.ts'
import { words } from '../../../_words/index.ts'
import { AmountField } from './amount-field.tsx'
import type { Choice } from './choices.ts'
import { fieldOfWork, SANDS } from './fields.ts'
import type { FormFault } from './form-faults.ts'
import { OverrideFields } from './override-fields.tsx'
import { OwnFields } from './own-fields.tsx'
import type { Inputs, ReadField } from './read-inputs.ts'
import { WorkFields } from './work-fields.tsx'

interface Props {
  readonly action: string
  readonly recipe: RecipeBody
  readonly inputs: Inputs
  readonly faults: readonly FormFault[]
  /** An earlier revision of the recipe that was asked for. */
  readonly revision: number | undefined
}

/** Everything a sheet is worked from, as a plain GET form: its address is the job. */
export function JobForm({ action, recipe, inputs, faults, revision }: Props) {
  const t = words('job')
  const errorAt = (name: string) => faults.find((fault) => fault.name === name)?.sentence
  const figure = (field: ReadField, hint?: string) => {
    const error = errorAt(field.name)
    return (
      <AmountField
        key={field.name}
        field={field}
        {...(error !== undefined && { error })}
        {...(hint !== undefined && { hint })}
      />
    )
  }
  const { site } = inputs
  const errorOf = (name: Choice) => {
    const error = errorAt(name)
    return error !== undefined && { error }
  }
  return (
    <form className="job-form filter screen-only" method="get" action={action}>
      {revision !== undefined && <input type="hidden" name="r" value={revision} />}
      <input type="hidden" name="units" value={inputs.system} />
      {/* Enter presses the first button of a form: it works out the sheet, whatever buttons stand before that one. */}
      <input type="submit" hidden />
      {inputs.works.map((work) => (
        <WorkFields
          key={work.number}
          work={work}
          several={inputs.works.length > 1}
          more={work.number === inputs.works.length && work.number < MOST_WORKS}
          error={errorAt(fieldOfWork('use', work.number))}
          figure={figure}
        />
      ))}
      <fieldset>
        <legend>{t('form.lime')}</legend>
        <div className="form-grid">
          {inputs.limeState && (
            <SelectField
              name="lime"
              label={t('fields.lime')}
              value={inputs.limeState}
              options={LIME_STATES.map((state) => ({
                value: state,
                label: labelOf('measured-states', state),
              }))}
              {...errorOf('lime')}
            />
          )}
          {inputs.limeState && figure(site.purity, t('fields.purityHint'))}
          <SelectField
            name="sand"
            label={t('fields.sand')}
            hint={t('fields.sandHint')}
            value={inputs.sand}
            options={SANDS.map((sand) => ({ value: sand, label: t(`sands.${sand}`) }))}
            {...errorOf('sand')}
          />
          {inputs.sand === 'measured' && figure(site.moisture, t('fields.moistureHint'))}
          {inputs.sand === 'measured' && figure(site.bulking, t('fields.bulkingHint'))}
          {figure(site.water)}
          {figure(site.heap)}
        </div>
      </fieldset>
      <fieldset>
        <legend>{t('form.measures')}</legend>
        <div className="form-grid">
          {figure(site.box)}
          {figure(site.mixer)}
          {inputs.packs.map((field) => figure(field))}
          <SelectField
            name="in"
            label={t('form.units')}
            hint={t('form.unitsHint')}
            value={inputs.system}
            options={SYSTEMS.map((system) => ({ value: system, label: t(`systems.${system}`) }))}
            {...errorOf('in')}
          />
        </div>
      </fieldset>
      <details open={[...inputs.prices, site.hours, site.rate].some(({ read }) => read.text !== '')}>
        <summary>{t('form.money')}</summary>
        <p className="note">{t('form.moneyNote')}</p>
        <div className="form-grid">
          <Field name="money" label={t('fields.currency')} hint={t('fields.currencyHint')}>
            {(control) => <input {...control} type="text" maxLength={12} defaultValue={inputs.money} />}
          </Field>
          {inputs.prices.map((field) => figure(field))}
          {figure(site.hours)}
          {figure(site.rate, t('fields.rateHint'))}
        </div>
      </details>
      <OwnFields inputs={inputs} figure={figure} />
      {recipe.standing !== 'in-use' && <OverrideFields inputs={inputs} error={errorAt('reason')} />}
      <div className="actions">
        <button className="button" type="submit">
          {t('form.submit')}
        </button>
        <a className="touch" href={action}>
          {t('form.again')}
        </a>
      </div>
    </form>
  )
}
