import { once } from 'node:events'
import { finished } from 'node:stream/promises'
import { Client } from 'pg'
import { from as copyFrom } from 'pg-copy-streams'

/** One COPY into a table, on a connection of its own; rows are objects by column and are written as they come. */
export async function startCopy(url: string, table: string, columns: readonly string[]) {
  const client = new Client({ connectionString: url })
  // What breaks a copy is told by its stream; a connection cut when all is over is no news.
  client.on('error', () => {})
  await client.connect()
  await client.query('SET synchronous_commit = off')
  const names = columns.map((column) => `"${column}"`).join(', ')
  const stream = client.query(copyFrom(`COPY "${table}" (${names}) FROM STDIN`))
  let held: string[] = []
  let size = 0
  const flush = async () => {
    const isFull = !stream.write(held.join(''))
    ;[held, size] = [[], 0]
    if (isFull) await once(stream, 'drain')
  }
  return {
    async write(row: object): Promise<void> {
      const values = columns.map((column) => copyText((row as Record<string, unknown>)[column]))
      const line = `${values.join('\t')}\n`
      held.push(line)
      size += line.length
      if (size > 1_000_000) await flush()
    },
    async end(): Promise<void> {
      await flush()
      stream.end()
      await finished(stream)
      await client.end()
    },
  }
}

/** A value as COPY's text format has it. */
function copyText(value: unknown): string {
  if (value === null || value === undefined) return '\\N'
  if (value instanceof Date) return value.toISOString()
  if (value instanceof Uint8Array) return `\\\\x${Buffer.from(value).toString('hex')}`
  if (Array.isArray(value)) return escaped(`{${value.map((one) => `"${one}"`).join(',')}}`)
  if (typeof value === 'object') return escaped(JSON.stringify(value))
  return typeof value === 'string' ? escaped(value) : String(value)
}

const escaped = (text: string) =>
  text.replaceAll('\\', '\\\\').replaceAll('\t', '\\t').replaceAll('\n', '\\n').replaceAll('\r', '\\r')
