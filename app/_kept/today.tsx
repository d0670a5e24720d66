import { speaking } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import type { KeptSheet } from '#lib/db/kept-sheets.ts'
import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import type { Language } from '../_words/languages.ts'
import { type Difference, differencesOf } from './differences.ts'
import type { WorkedSheet, Working } from './worked-sheet.ts'

const t = words('kept')

/** What the same inputs would give today, figure by figure where it differs, and the way to the live sheet. */
export function Today({
  kept,
  working,
  language,
}: {
  kept: KeptSheet
  working: Working | null
  /** That the sheet was kept in, and worked again in. */
  language: Language
}) {
  const found =
    working?.ok === true
      ? speaking(language, () => differencesOf(kept.figures.blocks, working.sheet.figures.blocks))
      : []
  return (
    <Section id="today" title={t('today.title')}>
      <ul className="plain-list">
        {versionChanges(kept, working).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {working === null ? (
        <p>{t('today.gone')}</p>
      ) : working.ok ? (
        <>
          <Differences differences={found} language={language} />
          {isOtherWorking(kept, working.sheet) && <p>{t('today.working')}</p>}
        </>
      ) : (
        <>
          <p>{t('today.unworked')}</p>
          <ul lang={language}>
            {working.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {working !== null && (
        <p className="screen-only">
          <a href={working.ok ? working.sheet.address : kept.address} hrefLang={language}>
            {t('one.live')}
          </a>
        </p>
      )}
    </Section>
  )
}

function versionChanges(kept: KeptSheet, working: Working | null): string[] {
  const { edition } = content()
  const now = working?.ok ? working.sheet.recipe?.revision : undefined
  return [
    ...(kept.recipe && now !== undefined && now !== kept.recipe.revision
      ? [t('today.revision', { before: kept.recipe.revision, now })]
      : []),
    ...(kept.edition === edition ? [] : [t('today.edition', { before: kept.edition, now: edition })]),
    ...(kept.sums === SUMS_VERSION
      ? []
      : [t('today.sums', { before: String(kept.sums), now: String(SUMS_VERSION) })]),
  ]
}

/** Whether the figures are found in another way today; of a sheet that kept no working nothing is known. */
function isOtherWorking(kept: KeptSheet, sheet: WorkedSheet): boolean {
  const lines = (blocks: readonly KeptBlock[]) =>
    JSON.stringify(
      blocks.flatMap((block) =>
        block.kind === 'working'
          ? block.steps.map(({ symbol, formula, source }) => [symbol, formula, source])
          : [],
      ),
    )
  const before = lines(kept.figures.blocks)
  return before !== '[]' && before !== lines(sheet.figures.blocks)
}

function Differences({ differences, language }: { differences: readonly Difference[]; language: Language }) {
  if (differences.length === 0) return <p>{t('today.same')}</p>
  const absent = <span className="unknown">{t('today.absent')}</span>
  const told = (text: string) => <span lang={language}>{text}</span>
  return (
    <DataTable
      stack
      label={t('today.title')}
      caption={t('today.differs', { count: differences.length })}
      columns={[
        { key: 'what', head: t('today.what'), names: true },
        { key: 'kept', head: t('today.kept') },
        { key: 'now', head: t('today.now') },
      ]}
      rows={differences.map(({ name, label, kept, today }) => ({
        key: name,
        cells: {
          what: told(label),
          kept: kept === null ? absent : told(kept),
          now: today === null ? absent : told(today),
        },
      }))}
    />
  )
}
