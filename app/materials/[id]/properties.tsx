import type { ReactNode } from 'react'
import type { Properties, PropertyName } from '#lib/mortar/material.ts'
import { type Property, scale } from '#lib/mortar/range.ts'
import { asWritten, inEnglish } from '../../_ui/as-written.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { Quantity } from '../../_ui/quantity.tsx'
import { BasisMark, SourceText } from '../../_ui/source-mark.tsx'
import { words } from '../../_words/index.ts'

const t = words('library')

/**
 * A material's figures: what is usual and what it may lie between, how it is known and from where.
 *
 * @param props.written whether a contributor added the material
 */
export function PropertyTable(props: { caption: ReactNode; properties: Properties; written?: boolean }) {
  const { caption, properties, written = false } = props
  const known = Object.entries(properties) as [PropertyName, Property][]
  if (known.length === 0) return <p>{t('material.noFigures')}</p>
  return (
    <DataTable
      label={t('material.figures')}
      caption={caption}
      hideCaption
      stack
      columns={[
        { key: 'property', head: t('material.property'), names: true },
        { key: 'value', head: t('material.value') },
        { key: 'source', head: t('material.source') },
      ]}
      rows={known.map(([name, property]) => ({
        key: name,
        id: name,
        cells: {
          property: words('terms')(`property.${name}`),
          value: <PropertyValue name={name} property={property} />,
          source: (
            <>
              {property.source === undefined ? (
                <BasisMark basis={property.basis} />
              ) : (
                <SourceText text={property.source} basis={property.basis} written={written} />
              )}
              {property.note !== undefined && (
                <span className="note block" {...(written ? asWritten() : inEnglish())}>
                  {property.note}
                </span>
              )}
            </>
          ),
        },
      }))}
    />
  )
}

/** Shares of one read easier as per cent; carbon is so much for each kilogram. */
function PropertyValue({ name, property }: { name: PropertyName; property: Property }) {
  if (name === 'carbon') return <Quantity value={property} unit="kg/kg" />
  if (property.unit === '1') return <Quantity value={scale(property, 100)} unit="%" />
  return <Quantity value={property} unit={property.unit} />
}
