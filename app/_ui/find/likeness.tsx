import type { Likeness, LikePart } from '#lib/search/index.ts'
import { formatList } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { inSentence, labelOf, termOf } from '../label.ts'

const BAR = 60

/** How like a wall a case is: the sum, and each part in figures, as a bar and in words. */
export function LikenessParts({ title, likeness }: { title: string; likeness: Likeness }) {
  const t = words('find')
  return (
    <div className="likeness">
      <p>
        <strong>
          {t('like.likeness')} {t('like.points', { points: likeness.points, of: likeness.of })}
        </strong>
      </p>
      <ul className="plain-list" aria-label={t('like.partsOf', { title })}>
        {likeness.parts.map(({ part, points, of, values }) => (
          <li key={part} className="likeness-part">
            <span>{t(`like.part.${part}`)}</span>
            <svg
              className="likeness-bar"
              viewBox={`0 0 ${BAR} 10`}
              preserveAspectRatio="none"
              aria-hidden="true"
            >
              <rect x="0" y="0" width={BAR} height="10" />
              <rect
                className="likeness-got"
                x="0"
                y="0"
                width={of === 0 ? 0 : (points / of) * BAR}
                height="10"
              />
            </svg>
            <span>
              {t('like.points', { points, of })}
              {', '}
              {valuesLabel(part, values)}
            </span>
          </li>
        ))}
      </ul>
    </div>
  )
}

/** The vocabularies that the values of a part are terms of. */
const VOCABULARIES = {
  unit: ['units'],
  wall: ['wall-types'],
  use: ['uses'],
  exposure: ['driving-rain', 'frost'],
  climate: [],
  salts: ['salts'],
} satisfies Record<LikePart, readonly string[]>

/** What the case itself has of a part. */
function valuesLabel(part: LikePart, values: readonly string[]): string {
  const t = words('find')
  if (values.length === 0) return t('like.noneRecorded')
  if (part === 'climate') return formatList(values.map((value) => labelOf('countries', value)))
  return formatList(
    values.map((id) => {
      const vocabulary = VOCABULARIES[part].find((one) => termOf(one, id) !== undefined)
      const label = inSentence(vocabulary === undefined ? id : labelOf(vocabulary, id))
      return part === 'exposure' && vocabulary !== undefined
        ? t(`like.exposure.${vocabulary}` as 'like.exposure.frost', { value: label })
        : label
    }),
  )
}
