import type { ReactNode } from 'react'
import type { Step } from '#lib/mortar/explain.ts'
import { formatWorking } from '../../_words/format.ts'
import { type Messages, words } from '../../_words/index.ts'
import { DataTable } from '../data-table.tsx'
import { Formula } from '../formula.tsx'
import { Quantity } from '../quantity.tsx'

/** Every line of working: symbol, meaning, formula with its numbers, result with its range, source. */
export function StepTable({
  steps,
  sourceOf,
  meaningOf = meaning,
}: {
  steps: readonly Step[]
  sourceOf: (text: string) => ReactNode
  /** What the key of a meaning says. */
  meaningOf?: (means: string) => string
}) {
  const t = words('workOut')
  return (
    <DataTable<string>
      stack
      label={t('working.title')}
      caption={t('working.title')}
      hideCaption
      columns={[
        { key: 'symbol', head: t('working.symbol'), names: true },
        { key: 'means', head: t('working.means') },
        { key: 'formula', head: t('working.formula') },
        { key: 'result', head: t('working.result'), number: true },
        { key: 'source', head: t('working.source') },
      ]}
      rows={steps.map(({ symbol, means, formula, numbers, result, unit, source }, place) => ({
        key: `${place}`,
        cells: {
          symbol: <Formula text={symbol} />,
          means: meaningOf(means),
          formula:
            formula === '' ? (
              t('working.given')
            ) : (
              <>
                <Formula text={formatWorking(formula)} />
                {numbers !== '' && (
                  <>
                    <br />
                    <span className="note">= {formatWorking(numbers)}</span>
                  </>
                )}
              </>
            ),
          result: <Quantity value={result} unit={unit} />,
          source: source === undefined ? null : sourceOf(source),
        },
      }))}
    />
  )
}

type Leaf<T, P extends string = ''> = {
  [K in keyof T & string]: T[K] extends string ? `${P}${K}` : Leaf<T[K], `${P}${K}.`>
}[keyof T & string]

/** The sums name meanings by keys that their own test holds to the catalogue. */
export const meaning = (key: string) => words('steps')(key as Leaf<Messages['steps']>)
