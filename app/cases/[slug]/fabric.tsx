import type { CaseBody } from '#lib/entry/case.ts'
import { asWritten } from '../../_ui/as-written.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { Facts } from '../../_ui/facts.tsx'
import { labelList, labelOf } from '../../_ui/label.ts'
import { Quantity } from '../../_ui/quantity.tsx'
import { Section } from '../../_ui/section.tsx'
import { Written } from '../../_ui/written.tsx'
import { formatCentury, formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

const t = words('pages')

/** The wall itself and what it stands in. */
export function Fabric({ body }: { body: CaseBody }) {
  const { place, structure, fabric, exposure } = body
  return (
    <Section id="wall" title={t('case.wall')}>
      <Facts
        facts={{
          [t('case.place')]: [place.locality, place.region, labelOf('countries', place.country)]
            .filter(Boolean)
            .join(', '),
          [t('case.structure')]: structureText(structure),
          [t('case.units')]: <Units units={fabric.units} />,
          [t('case.wallType')]: labelOf('wall-types', fabric.wall),
          [t('case.thickness')]:
            fabric.thicknessMm === undefined ? null : <Quantity value={fabric.thicknessMm} unit="mm" />,
          [t('case.rain')]: labelOf('driving-rain', exposure.drivingRain),
          [t('case.frost')]: labelOf('frost', exposure.frost),
          [t('case.salts')]: exposure.salts.length > 0 ? labelList('salts', exposure.salts) : null,
          [t('case.ground')]: labelOf('ground', exposure.ground),
          [t('case.aspect')]: labelOf('aspects', exposure.aspect),
          [t('case.exposureNote')]: exposure.note && <Written>{exposure.note}</Written>,
          [t('case.interests')]: body.interests && <Written>{body.interests}</Written>,
          [t('case.recorded')]: formatDate(body.recordedOn),
        }}
      />
    </Section>
  )
}

const structureText = ({ type, century }: CaseBody['structure']) =>
  century === undefined
    ? labelOf('structures', type)
    : t('case.ofCentury', { structure: labelOf('structures', type), century: formatCentury(century) })

const Units = ({ units }: { units: CaseBody['fabric']['units'] }) =>
  units.map((one) => (
    <span className="block" key={one.unit}>
      <a href={`/terms/units/${one.unit}`}>{labelOf('units', one.unit)}</a>
      {one.localName !== undefined && t('case.localName', { name: one.localName })}
      {one.note !== undefined && (
        <span className="note" {...asWritten()}>
          {' '}
          {one.note}
        </span>
      )}
    </span>
  ))

/** The mortars found in the wall, each with its samples; and what had been done to it before. */
export function Found({ body }: { body: CaseBody }) {
  return (
    <Section id="mortars" title={t('case.mortars')} note={t('case.mortarsNote')}>
      {body.mortars.length === 0 ? (
        <p>{t('case.noMortars')}</p>
      ) : (
        <DataTable
          label={t('case.mortars')}
          caption={t('case.mortars')}
          hideCaption
          stack
          columns={[
            { key: 'where', head: t('case.where'), names: true },
            { key: 'what', head: t('case.what') },
            { key: 'samples', head: t('case.samples') },
          ]}
          rows={body.mortars.map((mortar) => ({
            key: mortar.id,
            id: `mortar-${mortar.id}`,
            cells: {
              where: (
                <>
                  <Written>{mortar.where}</Written>
                  {mortar.phase !== undefined && (
                    <span className="note block" {...asWritten()}>
                      {mortar.phase}
                    </span>
                  )}
                </>
              ),
              what: <Written>{mortar.description}</Written>,
              samples:
                mortar.samples.length === 0
                  ? t('case.noSamples')
                  : mortar.samples.map((sample) => (
                      <span className="block" key={sample.id}>
                        <Written>{sample.location}</Written>: {words('terms')(`analysis.${sample.analysis}`)}
                        {sample.finding !== undefined && (
                          <span className="note block" {...asWritten()}>
                            {sample.finding}
                          </span>
                        )}
                      </span>
                    )),
            },
          }))}
        />
      )}
      {body.earlier.length > 0 && (
        <>
          <h3>{t('case.earlier')}</h3>
          <ul>
            {body.earlier.map((one) => (
              <li key={one.what}>
                {one.when !== undefined && `${formatDate(one.when)}: `}
                <Written>{one.what}</Written>
                {one.condition !== undefined && (
                  <span className="note block" {...asWritten()}>
                    {one.condition}
                  </span>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </Section>
  )
}
