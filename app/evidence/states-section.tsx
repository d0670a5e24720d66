import type { Evidence } from '#lib/api/evidence-read.ts'
import { DAMP_STATES } from '#lib/entry/terms.ts'
import { MIN_WALLS } from '#lib/evidence/index.ts'
import type { StateCount } from '#lib/search/works.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { Fold } from '../_ui/fold.tsx'
import { labelOf } from '../_ui/label.ts'
import { StackedBars } from '../_ui/plot-bars.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { Banded } from './banded.tsx'
import { type Counted, countDamp, countKinds, crossDamp, STATE_KINDS } from './kinds.ts'

const t = words('evidence')

/** Joint and stone together after so many years, as bars and as numbers. */
export function StatesSection({ states }: { states: readonly StateCount[] }) {
  const counted = countKinds(states)
  return (
    <Section id="states" title={t('states.title')} note={t('states.note')}>
      {counted.length === 0 ? (
        <p>{t('states.none')}</p>
      ) : (
        <Counts
          id="states"
          title={t('states.plot')}
          text={t('states.text')}
          kinds={STATE_KINDS.map((key) => ({ key, label: t(`states.kind.${key}`) }))}
          counted={counted}
        />
      )}
      {counted.some(({ unseen }) => unseen > 0) && <p className="note">{t('states.unseenNote')}</p>}
    </Section>
  )
}

/** Damp after so many years, and beside the weather before the visit. */
export function DampSection({ states, drying }: Pick<Evidence, 'states' | 'drying'>) {
  const counted = countDamp(states)
  if (counted.length === 0) return null
  return (
    <Section id="damp" title={t('damp.title')} note={t('damp.note')}>
      <Counts
        id="damp"
        title={t('damp.plot')}
        text={t('damp.text')}
        kinds={DAMP_STATES.map((key) => ({ key, label: labelOf('damp-states', key) }))}
        counted={counted}
      />
      <Weather states={states} by="rain" />
      <Weather states={states} by="season" />
      <DryingTable drying={drying} />
    </Section>
  )
}

/** Last of every bar, and hatched alike in all of them. */
const unseenKind = () => ({ key: 'unseen', label: t('states.unseen'), hatch: 8 }) as const

/** Bars with the table that says the same. Kinds that nobody found are left out of both. */
function Counts<K extends string>(props: {
  id: string
  title: string
  text: string
  kinds: readonly { readonly key: K; readonly label: string }[]
  counted: readonly Counted<K>[]
}) {
  const { id, title, text, counted } = props
  const kinds = props.kinds.filter(({ key }) => counted.some(({ counts }) => counts[key] > 0))
  const hasUnseen = counted.some(({ unseen }) => unseen > 0)
  return (
    <>
      <figure>
        <StackedBars
          id={`plot-${id}`}
          title={title}
          text={text}
          kinds={[...props.kinds.map((kind, hatch) => ({ ...kind, hatch })), unseenKind()]}
          shown={[...kinds.map(({ key }) => key as string), ...(hasUnseen ? ['unseen'] : [])]}
          bars={counted.map(({ years, counts, unseen }) => ({
            key: String(years),
            label: t('states.at', { years }),
            counts: { ...counts, unseen },
          }))}
        />
      </figure>
      <Fold summary={t('inNumbers', { title })}>
        <DataTable
          label={t('inNumbers', { title })}
          caption={t('inNumbers', { title })}
          columns={[
            { key: 'kind', head: t('states.what'), names: true },
            ...counted.map(({ years }) => ({
              key: String(years),
              head: t('states.at', { years }),
              number: true,
            })),
          ]}
          rows={[
            ...kinds.map(({ key, label }) => rowOf(label, counted, ({ counts }) => counts[key])),
            rowOf(t('states.sum'), counted, ({ sum }) => sum),
            rowOf(t('states.unseen'), counted, ({ unseen }) => unseen),
            rowOf(t('states.all'), counted, ({ sum, unseen }) => sum + unseen),
          ]}
        />
      </Fold>
    </>
  )
}

const rowOf = <K extends string>(
  label: string,
  counted: readonly Counted<K>[],
  value: (at: Counted<K>) => number,
) => ({
  key: label,
  cells: { kind: label, ...Object.fromEntries(counted.map((at) => [String(at.years), value(at)])) },
})

function Weather({ states, by }: { states: readonly StateCount[]; by: 'rain' | 'season' }) {
  const rows = crossDamp(states, by)
  const caption = t(`damp.${by}Table`)
  return (
    <Fold summary={caption}>
      <DataTable
        label={caption}
        caption={caption}
        columns={[
          { key: 'row', head: t(`damp.${by}`), names: true },
          ...DAMP_STATES.map((damp) => ({
            key: damp as string,
            head: labelOf('damp-states', damp),
            number: true,
          })),
        ]}
        rows={rows.map(({ row, counts }) => ({
          key: row,
          cells: {
            row: by === 'season' ? labelOf('seasons', row) : t(`damp.rainOf.${row}` as 'damp.rainOf.week'),
            ...Object.fromEntries(counts.map(({ damp, works }) => [damp, works])),
          },
        }))}
      />
    </Fold>
  )
}

/** How long walls took to be found dry, and dry ones to be found damp again. */
function DryingTable({ drying }: Pick<Evidence, 'drying'>) {
  const lines = (['dry', 'again'] as const).filter((line) => drying[line].works > 0)
  const years = lines
    .map((line) => drying[line].horizons.map((one) => one.years))
    .reduce((most, own) => (own.length > most.length ? own : most), [])
  if (lines.length === 0) return null
  return (
    <>
      <Fold summary={t('damp.drying')}>
        <DataTable
          label={t('damp.drying')}
          caption={t('damp.drying')}
          columns={[
            { key: 'what', head: t('damp.dryingWhat'), names: true },
            { key: 'found', head: t('damp.dryingFound'), number: true },
            ...years.map((y) => ({ key: String(y), head: t('states.at', { years: y }), number: true })),
          ]}
          rows={lines.map((line) => ({
            key: line,
            cells: {
              what: t(`damp.dryingOf.${line}`),
              found: t('quality.of', { count: drying[line].found, all: drying[line].works }),
              ...Object.fromEntries(
                drying[line].horizons.map((one) => [
                  String(one.years),
                  <Banded key={one.years} share={one} />,
                ]),
              ),
            },
          }))}
        />
      </Fold>
      <p className="note">{t('damp.dryingNote', { walls: MIN_WALLS })}</p>
    </>
  )
}
