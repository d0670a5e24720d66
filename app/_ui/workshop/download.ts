import { type Cell, csvLine } from '#lib/api/csv.ts'
import { content } from '#lib/content/index.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import { type Typed, typedFrom } from '../../_http/form.ts'
import type { FigureVersions } from '../changes-since.ts'
import type { System } from '../systems.ts'
import type { AnyCalculation } from './calculation.ts'
import { benchData } from './data.ts'
import { inSystem, namedFigures, namedWords } from './figures.ts'
import type { FieldRead } from './read.ts'
import { inputText } from './result.tsx'
import { type Worked, workOut } from './run.ts'
import type { Block } from './shown.ts'
import { versionsOf } from './versions.ts'

/** One line of a download. */
interface Line {
  readonly part: 'input' | 'result'
  readonly name: string
  readonly label: string
  readonly low: number | null
  readonly typical: number | null
  readonly high: number | null
  readonly unit: string | null
  readonly words: string | null
}

/** A result as a file would hold it, or what is wrong with its inputs. */
export type Download =
  | {
      readonly ok: true
      readonly lines: readonly Line[]
      readonly versions: FigureVersions
      readonly typed: Typed
    }
  | { readonly ok: false; readonly faults: Worked['faults'] }

/** Works a calculation from the query of its page. */
export function downloadOf(calculation: AnyCalculation, query: URLSearchParams): Download {
  const { form, shown, faults } = workOut(
    calculation,
    typedFrom(Object.fromEntries(query)),
    benchData(calculation),
  )
  if (!shown) return { ok: false, faults }
  return {
    ok: true,
    lines: [...form.fields.flatMap(inputLine), ...resultLines(shown.blocks, form.system)],
    versions: versionsOf({ edition: content().edition, sums: SUMS_VERSION }, shown.blocks),
    typed: form.typed,
  }
}

const EMPTY = { low: null, typical: null, high: null, unit: null, words: null }

function inputLine(read: FieldRead): Line[] {
  const words = inputText(read)
  if (words === undefined) return []
  const { name, label } = read.field
  return [{ ...EMPTY, part: 'input', name, label, words }]
}

function resultLines(blocks: readonly Block[], system: System): Line[] {
  const figures = namedFigures(blocks).map((figure): Line => {
    const { value, unit } = inSystem(figure, system)
    const { low, typical, high } =
      value === null ? EMPTY : typeof value === 'number' ? { low: value, typical: value, high: value } : value
    const kept = (one: number | null) => (one === null ? null : Number(one.toPrecision(6)))
    return {
      ...EMPTY,
      part: 'result',
      name: figure.name,
      label: figure.label,
      low: kept(low),
      typical: kept(typical),
      high: kept(high),
      unit,
    }
  })
  const said = namedWords(blocks).map((one): Line => ({ ...EMPTY, ...one, part: 'result' }))
  return [...figures, ...said]
}

const COLUMNS = ['part', 'name', 'label', 'low', 'typical', 'high', 'unit', 'words'] as const

/** RFC 4180, one line a figure; the last lines say what it was made from. */
export function asCsvFile({ lines, versions }: Extract<Download, { ok: true }>): string {
  const made = Object.entries({ edition: versions.edition, sums: versions.sums, figures: versions.digest })
  const rows: Cell[][] = [
    [...COLUMNS],
    ...lines.map((line) => COLUMNS.map((column) => line[column])),
    ...made.map(([name, value]): Cell[] => ['made-from', name, '', null, null, null, null, String(value)]),
  ]
  return rows.map((row) => csvLine(row)).join('')
}

/** The same as JSON, with what was typed. */
export const asJsonFile = (calculation: AnyCalculation, made: Extract<Download, { ok: true }>) => ({
  calculation: calculation.name,
  made: made.versions,
  typed: made.typed,
  lines: made.lines,
})
