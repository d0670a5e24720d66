import { words } from '../../_words/index.ts'
import { Frame } from '../frame.tsx'
import { type Cluster, type Mark, marksOf } from './clusters.ts'
import { countrySheet, type Sheet, worldSheet } from './sheet.ts'

const WORLD_FILE = '/map/world.svg'

/**
 * Where the cases of a list are: a mark for each country or region, which leads to its cases. Drawn for the
 * whole world, or for one country with what lies around it. A list beside it must say the same in words.
 *
 * @param country ISO 3166-1 alpha-2, for the map of one country
 */
export function CaseMap(props: {
  title: string
  country?: string | undefined
  clusters: readonly Cluster[]
}) {
  const { title, country, clusters } = props
  const sheet = country === undefined ? worldSheet() : countrySheet(country, clusters)
  if (sheet === undefined) return null
  const { width, height } = sheet.frame
  return (
    <Frame label={title}>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing that holds links is a group of them */}
      <svg
        className={country === undefined ? 'map map-world' : 'map'}
        viewBox={`0 0 ${width} ${height}`}
        role="group"
        aria-label={title}
      >
        <Ground sheet={sheet} />
        {marksOf(clusters, sheet.frame, country === undefined ? 'world' : 'country').map((mark) => (
          <ClusterMark key={mark.id} mark={mark} />
        ))}
      </svg>
    </Frame>
  )
}

/** The world's outlines are a file of their own, which a browser keeps; a country's are few. */
function Ground({ sheet: { land, country } }: { sheet: Sheet }) {
  if (country === undefined)
    return (
      <>
        <use className="map-land" href={`${WORLD_FILE}#land`} />
        <use className="map-border" href={`${WORLD_FILE}#borders`} />
      </>
    )
  return (
    <>
      <path className="map-land" d={land} />
      <path className="map-country" d={country} />
    </>
  )
}

function ClusterMark({ mark: { label, count, href, x, y, radius, name } }: { mark: Mark }) {
  const t = words('find')
  return (
    <a className="map-mark" href={href}>
      <title>{t('map.mark', { place: label, count })}</title>
      <circle cx={x} cy={y} r={radius} />
      <text className="map-count" x={x} y={y}>
        {t('map.count', { count })}
      </text>
      {name !== undefined && (
        <text className="map-name" x={name.x} y={name.y}>
          {label}
        </text>
      )}
    </a>
  )
}
