import { content } from '#lib/content/index.ts'
import { DRIVING_RAIN, FROST, SALTS, USES, WALL_TYPES } from '#lib/entry/terms.ts'
import type { FieldFault } from '#lib/errors.ts'
import type { WallAsked } from '#lib/search/index.ts'
import { NumberField, SelectField } from '../_ui/field.tsx'
import { typedWrong } from '../_ui/find/faults.tsx'
import { labelOf } from '../_ui/label.ts'
import { unitOptions } from '../_ui/unit-tree.ts'
import { words } from '../_words/index.ts'

const t = words('find')

/** What an answer is when nobody looked: the same as leaving it open. */
const UNKNOWN = 'not-recorded'

const optionsOf = (vocabulary: string, ids: Iterable<string>) =>
  [...ids].filter((id) => id !== UNKNOWN).map((value) => ({ value, label: labelOf(vocabulary, value) }))

/** A wall in six answers, each of which may stay open. */
export function WallForm(props: {
  wall: WallAsked
  from: string | undefined
  /** What of the address could not be used. */
  faults: readonly FieldFault[]
}) {
  const { wall, from, faults } = props
  const units = unitOptions(
    [...(content().vocabularies.get('units')?.keys() ?? [])].map((id) => ({ id, count: 0 })),
  )
  const countries = [...(content().vocabularies.get('countries')?.keys() ?? [])]
  return (
    <form className="filter" method="get" action="/like">
      <p>{t('like.optional')}</p>
      <div className="form-grid form-grid-wide">
        <SelectField
          name="unit"
          label={t('like.unit')}
          any={t('like.anyUnit')}
          {...(wall.unit?.[0] !== undefined && { value: wall.unit[0] })}
          options={units.map(({ id, label }) => ({ value: id, label }))}
        />
        <SelectField
          name="wall"
          label={t('like.wall')}
          any={t('like.anyWall')}
          {...(wall.wall !== undefined && { value: wall.wall })}
          options={optionsOf('wall-types', WALL_TYPES)}
        />
        <SelectField
          name="use"
          label={t('like.use')}
          any={t('like.anyUse')}
          {...(wall.use !== undefined && { value: wall.use })}
          options={optionsOf('uses', USES)}
        />
        <SelectField
          name="rain"
          label={t('like.rain')}
          any={t('like.anyRain')}
          {...(wall.exposure?.rain !== undefined && { value: wall.exposure.rain })}
          options={optionsOf('driving-rain', DRIVING_RAIN)}
        />
        <SelectField
          name="frost"
          label={t('like.frost')}
          any={t('like.anyFrost')}
          {...(wall.exposure?.frost !== undefined && { value: wall.exposure.frost })}
          options={optionsOf('frost', FROST)}
        />
        <SelectField
          name="country"
          label={t('like.country')}
          any={t('like.anyCountry')}
          {...(wall.place?.country !== undefined && { value: wall.place.country })}
          options={optionsOf('countries', countries)}
        />
        {(['latitude', 'longitude'] as const).map((name) => (
          <NumberField
            key={name}
            name={name}
            label={t(`like.${name}`)}
            {...positionOf(wall.place?.[name])}
            {...typedWrong(faults, name)}
          />
        ))}
      </div>
      <p className="field-hint">{t('like.position')}</p>
      <FurtherUnits units={wall.unit?.slice(1) ?? []} />
      <SaltBoxes salts={wall.salts} />
      {from !== undefined && <input type="hidden" name="from" value={from} />}
      <div className="actions">
        <button className="button" type="submit">
          {t('like.show')}
        </button>
      </div>
    </form>
  )
}

const positionOf = (degrees: number | undefined) => (degrees === undefined ? {} : { value: String(degrees) })

/** Units beside the first, as a case may bring them: each can be left out. */
const FurtherUnits = ({ units }: { units: readonly string[] }) =>
  units.length === 0 ? null : (
    <fieldset className="box-line">
      <legend>{t('like.alsoUnits')}</legend>
      {units.map((unit) => (
        <label key={unit} className="choice">
          <input type="checkbox" name="unit" value={unit} defaultChecked />
          {labelOf('units', unit)}
        </label>
      ))}
    </fieldset>
  )

/** Which salts were seen; that none were is an answer too. */
const SaltBoxes = ({ salts }: { salts: readonly string[] | undefined }) => (
  <fieldset className="box-line">
    <legend>{t('like.salts')}</legend>
    {SALTS.map((salt) => (
      <label key={salt} className="choice">
        <input type="checkbox" name="salt" value={salt} defaultChecked={salts?.includes(salt) ?? false} />
        {labelOf('salts', salt)}
      </label>
    ))}
    <label className="choice">
      <input type="checkbox" name="salt" value="none" defaultChecked={salts?.length === 0} />
      {t('like.saltsNone')}
    </label>
  </fieldset>
)
