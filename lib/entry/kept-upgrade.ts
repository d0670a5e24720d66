/**
 * Kept figures of an earlier form in the form of today. What was not kept then stays away: drawings and working came
 * with the second form.
 */
export const upgraded = (stored: unknown): unknown =>
  isRecord(stored) && stored.version === 1 ? secondOf(stored) : stored

type Told = Readonly<Record<string, unknown>>

const isRecord = (value: unknown): value is Told =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const listOf = (value: unknown): Told[] => (Array.isArray(value) ? value.filter(isRecord) : [])

/** The first form knew costs by their names alone, and printed them as it printed any number. */
function secondOf(first: Told): Told {
  const labels = new Set<unknown>()
  const money = (figure: Told, label: string) => {
    labels.add(label)
    return { ...figure, as: 'money' }
  }
  const blocks = listOf(first.blocks).map((block) => {
    if (block.kind === 'figures' && block.name === 'job') {
      const figures = listOf(block.figures).map((figure) =>
        String(figure.name).startsWith('cost-') ? money(figure, String(figure.label)) : figure,
      )
      return { ...block, figures }
    }
    const costs = listOf(block.columns).find(({ key }) => key === 'cost')
    if (block.kind !== 'table' || block.name !== 'quantities' || costs === undefined) return block
    const rows = listOf(block.rows).map((row) => {
      const cells = isRecord(row.cells) ? row.cells : {}
      if (!isRecord(cells.cost)) return row
      return { ...row, cells: { ...cells, cost: money(cells.cost, `${cells.ingredient}, ${costs.head}`) } }
    })
    return { ...block, rows }
  })
  const printed = listOf(first.printed).map((line) =>
    labels.has(line.label) ? { ...line, cost: true } : line,
  )
  return { ...first, version: 2, blocks, printed }
}
