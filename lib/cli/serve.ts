import { printFault } from '#lib/content/fault.ts'
import { loadContent } from '#lib/content/load.ts'
import { migrate } from '#lib/db/migrate/apply.ts'
import { inTurn } from '#lib/db/migrate/turn.ts'
import { readSettings, type Settings, setDatabaseUrl, setDataDir, startedByNpm } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'
import { build } from './build.ts'
import { openDatabase, prepareDataDir } from './database.ts'
import { run as generate } from './generate.ts'
import { say, step } from './say.ts'
import { checkPort, siteUrl, startSite } from './site-process.ts'
import { type Supervised, supervise } from './supervise.ts'

/**
 * `npm run serve`: from a fresh clone to a running site, saying each step, and then keeping it running until it is
 * told to stop. With `--dev` the site is not built but follows every change of the sources. Resolves with the exit
 * code once everything it started is stopped.
 */
export async function run(args: readonly string[]): Promise<number> {
  const told = new AbortController()
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => told.abort())
  if (startedByNpm()) endWithParent(told)
  /** What must be undone, last first. */
  const undo: (() => Promise<void> | void)[] = []
  try {
    const mode = args.includes('--dev') ? 'development' : 'production'
    return await serve(readSettings(), mode, told.signal, undo)
  } catch (error) {
    if (told.signal.aborted) return 0
    throw error
  } finally {
    if (undo.length > 0) say('Stopping')
    for (const stop of undo.reverse()) await stop()
  }
}

async function serve(
  settings: Settings,
  mode: 'production' | 'development',
  told: AbortSignal,
  undo: (() => Promise<void> | void)[],
): Promise<number> {
  await checkPort(settings)
  const dataDir = prepareDataDir(settings)
  await generate()
  await step('Checking the content', checkContent)
  told.throwIfAborted()

  const database = await step(
    settings.databaseUrl === undefined
      ? `Starting the database in ${dataDir}`
      : 'Using the database of DATABASE_URL',
    () => openDatabase(settings, dataDir, 'alone'),
  )
  undo.push(database.release)
  const kept: Supervised[] = []
  if (database.server) {
    const server = supervise('The database', database.server.first, database.server.start)
    undo.push(server.stop)
    kept.push(server)
  }
  told.throwIfAborted()
  const applied = await migrate(database.url, { connectMs: settings.databaseConnectMs, say })
  if (applied.length === 0) say('The database is up to date')
  setDatabaseUrl(database.url)
  setDataDir(dataDir)
  const turn = { connectMs: settings.databaseConnectMs, say }
  await inTurn(database.url, turn, renew)
  if (settings.demo)
    await step('Loading the invented records of the demo', () => inTurn(database.url, turn, loadDemo))
  await signHeads(dataDir)
  undo.push(() => signHeads(dataDir))
  told.throwIfAborted()

  if (mode === 'production') await build(told)
  const start = () => startSite({ ...settings, dataDir }, database.url, mode)
  const site = supervise('The site', await step('Starting the site', start), start)
  undo.push(site.stop)
  kept.push(site)
  told.throwIfAborted()
  await offerStewardLink()
  const { startPost } = await import('./post.ts')
  undo.push(startPost(settings.siteUrl).stop)
  say(`Ready on ${siteUrl(settings)}`)

  const stop = new Promise<'told'>((resolve) => told.addEventListener('abort', () => resolve('told')))
  const end = await Promise.race([stop, ...kept.map(({ gaveUp }) => gaveUp)])
  if (end !== 'told') throw new Halt(`${end} Giving up; the lines above and the data folder's log say why.`)
  return 0
}

/** npm, told to end, ends without telling what it runs: its going is taken as the word to stop. */
function endWithParent(told: AbortController): void {
  const parent = process.ppid
  const watch = setInterval(() => {
    if (process.ppid !== parent) told.abort()
  }, 300)
  watch.unref()
}

function checkContent(): void {
  const outcome = loadContent('content')
  if (!outcome.ok)
    throw new Halt(
      `The content has ${outcome.faults.length} fault(s):\n${outcome.faults.map(printFault).join('\n')}`,
    )
}

/** After an upgrade, lists and searches are made again before anyone asks them. */
async function renew(): Promise<void> {
  const { renewProjections } = await import('#lib/workflow/renew-projections.ts')
  if (await renewProjections()) say('Lists and searches were made again from the record')
}

async function loadDemo(): Promise<void> {
  const { loadDemo: load } = await import('#lib/workflow/load-demo.ts')
  const { added, revised, removed } = await load()
  if (removed) say('  the demo was removed from this database and stays removed')
  else if (added + revised > 0) say(`  ${added} added, ${revised} revised`)
}

/** Until there is a steward, every start says how to become one. */
async function offerStewardLink(): Promise<void> {
  const { makeStewardLink } = await import('#lib/auth/links.ts')
  const { closeDb } = await import('#lib/db/client.ts')
  try {
    const link = await makeStewardLink()
    if (link !== null)
      say(`Nobody is steward yet. Whoever opens this link first, within a day, is:\n  ${link}`)
  } finally {
    await closeDb()
  }
}

/** The heads of all chains, signed into the data folder: what `verify` holds the record against. */
async function signHeads(dataDir: string): Promise<void> {
  const { writeHeads } = await import('#lib/workflow/sign-heads.ts')
  const { closeDb } = await import('#lib/db/client.ts')
  try {
    const { contradicted } = await writeHeads(dataDir)
    if (contradicted.length > 0)
      say('The record contradicts what was signed before. Run `npm run verify` to see where.')
  } catch (error) {
    say(`The heads of the record could not be signed: ${(error as Error).message}`)
  } finally {
    await closeDb()
  }
}
