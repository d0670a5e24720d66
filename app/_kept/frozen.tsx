import type { KeptSheet } from '#lib/db/kept-sheets.ts'
import { readSettings } from '#lib/env.ts'
import { Facts } from '../_ui/facts.tsx'
import { addressWith } from '../_ui/query.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import type { Language } from '../_words/languages.ts'
import { AsKept, KeptIn } from './as-kept.tsx'
import { KeptBlocks } from './kept-blocks.tsx'
import { kindOf, recipeTitle } from './kinds.ts'

const t = words('kept')

/**
 * All that was kept of a sheet itself, in the language in which it was kept.
 *
 * @param props.open with its working unfolded, so that it prints too
 */
export const Frozen = ({
  kept: { id, figures, address },
  language,
  open,
}: {
  kept: KeptSheet
  language: Language
  open: boolean
}) => (
  <>
    <KeptIn language={language} />
    <AsKept language={language}>
      <div className="bench-result kept-sheet">
        <Inputs inputs={figures.inputs} />
        <KeptBlocks blocks={figures.blocks} open={open} />
        <p className="print-only address note">{`${readSettings().siteUrl}${address}`}</p>
      </div>
    </AsKept>
    {!open && figures.blocks.some(({ kind }) => kind === 'working') && (
      <p className="screen-only note">
        {t('one.print')}{' '}
        <a href={addressWith(`/account/sheets/${id}`, { working: 'open' })}>{t('one.working')}</a>
      </p>
    )}
  </>
)

const Inputs = ({ inputs }: { inputs: readonly string[] }) => (
  <p className="bench-inputs note">
    <strong>{t('one.inputs')}</strong> {inputs.join('; ')}.
  </p>
)

/** What a sheet is and from what it was worked. */
export const MadeFrom = ({ kept }: { kept: KeptSheet }) => (
  <Facts
    facts={{
      [t('one.kind')]: kindOf(kept.calculation),
      [t('one.on')]: formatDate(kept.createdAt),
      [t('one.recipe')]: kept.recipe && (
        <a href={addressWith(`/recipes/${kept.recipe.slug}`, { revision: kept.recipe.revision })}>
          {t('recipeAt', { title: recipeTitle(kept.recipe), revision: kept.recipe.revision })}
        </a>
      ),
      [t('one.edition')]: kept.edition,
      [t('one.sums')]: String(kept.sums),
      [t('one.digest')]: kept.digest,
      [t('one.note')]: kept.note === '' ? null : <span className="kept-note">{kept.note}</span>,
    }}
  />
)
