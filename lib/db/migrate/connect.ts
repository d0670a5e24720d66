import { setTimeout as sleep } from 'node:timers/promises'
import { Client } from 'pg'
import { Halt } from '#lib/errors.ts'
import { OLDEST_MAJOR } from '../embedded/binaries.ts'

/** Answers that pass by themselves: the server is starting, or about to. */
const PASSING = new Set(['57P03', 'ECONNREFUSED', 'ENOENT', 'ECONNRESET'])

/**
 * A session on a database, waiting up to `withinMs` for a server that is only just starting.
 *
 * @throws Halt in plain words when it can't be reached or is older than version 15; never repeats the password
 */
export async function openSession(url: string, withinMs: number): Promise<Client> {
  const deadline = performance.now() + withinMs
  for (;;) {
    const client = new Client({
      connectionString: url,
      connectionTimeoutMillis: Math.max(100, Math.min(withinMs, deadline - performance.now())),
      application_name: 'putlog',
    })
    // A lost session is told by the query that was running on it.
    client.on('error', () => {})
    try {
      await client.connect()
      await refuseOldServer(client)
      return client
    } catch (error) {
      await client.end().catch(() => {})
      if (error instanceof Halt) throw error
      if (PASSING.has(codeOf(error)) && performance.now() < deadline) await sleep(100)
      else throw new Halt(explain(url, error, withinMs))
    }
  }
}

async function refuseOldServer(client: Client): Promise<void> {
  const answer = await client.query<{ number: string; version: string }>(
    "SELECT current_setting('server_version_num') AS number, current_setting('server_version') AS version",
  )
  const row = answer.rows[0]
  if (row && Number(row.number) < OLDEST_MAJOR * 10_000)
    throw new Halt(
      `The database runs PostgreSQL ${row.version}; ${OLDEST_MAJOR} is the oldest this site works with.`,
    )
}

function codeOf(error: unknown): string {
  const { code, errors } = error as { code?: string; errors?: { code?: string }[] }
  return code ?? errors?.[0]?.code ?? ''
}

function explain(url: string, error: unknown, withinMs: number): string {
  const at = new URL(url)
  const host = at.searchParams.get('host') ?? at.hostname
  const where = `${host}:${at.port || '5432'}`
  const database = at.pathname.slice(1)
  const reasons: Record<string, string> = {
    ECONNREFUSED: `nothing listens on ${where}. Is the server started, and the port right?`,
    ENOENT: `there is no socket in ${host}. Is the server started?`,
    ENOTFOUND: `no such host: ${host}.`,
    EAI_AGAIN: `the name ${host} can't be resolved.`,
    '28P01': `${where} does not accept the user name or password.`,
    '28000': `${where} does not let this user in.`,
    '3D000': `${where} has no database named ${database}. Create it first.`,
    '53300': `${where} has no free connections.`,
  }
  const said = error instanceof Error ? error.message : String(error)
  const reason =
    reasons[codeOf(error)] ??
    (/timeout/i.test(said) ? `${where} did not answer within ${withinMs} ms.` : `${where} answered: ${said}.`)
  return `The database can't be reached: ${reason}\nDATABASE_URL says where it is.`
}
