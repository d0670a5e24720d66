import { content } from '#lib/content/index.ts'
import type { TableRow } from '#lib/content/types.ts'
import { inEnglish } from '../../_ui/as-written.ts'
import { measureText, proportionText } from '../../_ui/ingredients.tsx'
import { labelList } from '../../_ui/label.ts'
import { addressWith } from '../../_ui/query.ts'
import { StandingMark } from '../../_ui/standing-mark.tsx'
import { English, EnglishIn } from '../../_ui/written.tsx'
import { words } from '../../_words/index.ts'

const t = words('pages')

/**
 * The name of a row, which is its lasting address, with its uses, region and period; and the way to the walls where
 * recipes that follow it were used.
 */
export const RowName = ({ row, watched = 0 }: { row: TableRow; watched?: number | undefined }) => (
  <>
    <a href={`#${row.id}`} {...inEnglish()}>
      {row.label}
    </a>
    <span className="note block">
      {labelList('uses', row.uses)}
      <br />
      <English>{`${row.region}, ${row.period}`}</English>
    </span>
    {watched > 0 && (
      <span className="note block">
        <a href={addressWith('/evidence', { row: row.ref })}>
          {words('evidence')('links.row', { works: watched })}
        </a>
      </span>
    )}
  </>
)

/** A row as its source states it, with all that stands beside its figures. */
export const RowStated = ({ row }: { row: TableRow }) => (
  <>
    <span className="block">{proportionText(row.ingredients)}</span>
    <span className="note block">
      {measureText(row.ingredients)}. <English>{row.measured}</English>
    </span>
    {row.additions !== undefined && (
      <span className="note block">
        <EnglishIn say={(text) => t('table.additions', { text })}>{row.additions}</EnglishIn>
      </span>
    )}
    {row.notes !== undefined && (
      <span className="note block" {...inEnglish()}>
        {row.notes}
      </span>
    )}
    {row.ambiguous !== undefined && (
      <span className="note block">
        <EnglishIn say={(text) => t('table.ambiguous', { text })}>{row.ambiguous}</EnglishIn>
      </span>
    )}
    {row.ancestor !== undefined && <Ancestor address={row.ancestor} />}
  </>
)

function Ancestor({ address }: { address: string }) {
  const row = content().rows.get(address)
  return (
    <span className="note block">
      {t.rich('table.ancestor', {
        row: row?.label ?? address,
        link: (label) => (
          <a href={`/tables/${address}`} {...inEnglish()}>
            {label}
          </a>
        ),
      })}
    </span>
  )
}

/** What a row may be taken for, and why where that is not everything. */
export const RowStanding = ({ row }: { row: TableRow }) => (
  <>
    <StandingMark standing={row.standing} />
    {row.standingReason !== undefined && (
      <span className="note block" {...inEnglish()}>
        {row.standingReason}
      </span>
    )}
  </>
)
