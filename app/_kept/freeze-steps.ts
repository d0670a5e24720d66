import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import type { Step } from '#lib/mortar/explain.ts'
import { meaning } from '../_ui/workshop/working.tsx'

/** Lines of working as they are kept, with what their symbols stand for in words; none where there are none. */
export const freezeSteps = (name: string, title: string, steps: readonly Step[]): KeptBlock[] =>
  steps.length === 0
    ? []
    : [
        {
          kind: 'working',
          name,
          title,
          steps: steps.map(({ symbol, means, formula, numbers, result, unit, source }) => ({
            symbol,
            means: meaning(means),
            formula,
            numbers,
            result: { low: result.low, typical: result.typical, high: result.high },
            unit,
            ...(source !== undefined && { source }),
          })),
        },
      ]
