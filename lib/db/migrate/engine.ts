import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { PrismaPg } from '@prisma/adapter-pg'
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum } from '@prisma/driver-adapter-utils'
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg'
import { Pool, type QueryResult } from 'pg'
import { type Migration, migrationsFolder } from './folder.ts'

/** This site's schema. */
export const schemaFile = fileURLToPath(new URL('../../../prisma/schema.prisma', import.meta.url))

const noFilter = { externalTables: [], externalEnums: [] }

let loaded = false

/** Node can't import WebAssembly by itself, so the module's two halves are joined here. */
function load(): void {
  if (loaded) return
  const script = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg')
  const module = new WebAssembly.Module(readFileSync(script.replace(/\.js$/, '.wasm')))
  const instance = new WebAssembly.Instance(module, { './schema_engine_bg.js': { ...engine } })
  engine.__wbg_set_wasm(instance.exports)
  ;(instance.exports.__wbindgen_start as () => void)()
  loaded = true
}

/**
 * The adapter refuses the catalogue's one-letter type ("char", number 18), which the engine asks for. Its rows
 * are told to hold the array of that type (1002), which the adapter lets through, and then put right.
 */
class CatalogAdapter extends PrismaPg {
  override async connect() {
    const adapter = await super.connect()
    const client = adapter.underlyingDriver()
    const query = client.query.bind(client) as (...given: unknown[]) => Promise<QueryResult>
    Object.assign(client, {
      query: async (...given: unknown[]) => {
        const result = await query(...given)
        for (const field of result.fields ?? []) if (field.dataTypeID === 18) field.dataTypeID = 1002
        return result
      },
    })
    const { CharacterArray, Character } = ColumnTypeEnum
    const queryRaw = adapter.queryRaw.bind(adapter)
    adapter.queryRaw = async (asked) => {
      const answer = await queryRaw(asked)
      const columnTypes = answer.columnTypes.map((type) => (type === CharacterArray ? Character : type))
      return { ...answer, columnTypes }
    }
    return adapter
  }
}

/** Opens the engine on a database for one question. */
async function ask<T>(
  url: string,
  schema: string,
  question: (opened: engine.SchemaEngine) => Promise<T>,
): Promise<T> {
  load()
  const pool = new Pool({ connectionString: url, max: 1 })
  const adapter = bindMigrationAwareSqlAdapterFactory(new CatalogAdapter(pool))
  const opened = await engine.SchemaEngine.new({ datamodels: [['schema.prisma', schema]] }, () => {}, adapter)
  try {
    return await question(opened)
  } finally {
    opened.free()
    await pool.end()
  }
}

/**
 * The SQL that would bring a database to what the schema says, statement by statement; none when they agree.
 *
 * @param leaveOut names of indexes, and `table.column`s, that are written by hand and that the schema can't say
 */
export async function differences(
  url: string,
  schema: string,
  leaveOut: readonly string[] = [],
): Promise<string[]> {
  const files = [{ path: 'schema.prisma', content: schema }]
  const { stdout } = await ask(url, schema, (opened) =>
    opened.diff({
      from: { tag: 'schemaDatasource', files, configDir: dirname(schemaFile) },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: null,
      filters: noFilter,
    }),
  )
  return (stdout ?? '')
    .split(/^-- /m)
    .map((part) => part.slice(part.indexOf('\n') + 1).trim())
    .filter((statement) => statement !== '' && !leaveOut.some((name) => drops(statement, name)))
}

/** Whether a statement does nothing but drop the named index or column. */
function drops(statement: string, name: string): boolean {
  const [table, column] = name.split('.')
  const dropping = column ? `ALTER TABLE "${table}" DROP COLUMN "${column}";` : `DROP INDEX "${name}";`
  return statement === dropping
}

/** What Prisma's own tool would say of the migrations recorded in a database. Empty lists: it agrees. */
export async function diagnose(url: string, schema: string, migrations: readonly Migration[]) {
  return ask(url, schema, (opened) =>
    opened.diagnoseMigrationHistory({
      migrationsList: {
        baseDir: migrationsFolder,
        lockfile: { path: 'migration_lock.toml', content: 'provider = "postgresql"\n' },
        shadowDbInitScript: '',
        migrationDirectories: migrations.map(({ name, sql }) => ({
          path: name,
          migrationFile: { path: 'migration.sql', content: { tag: 'ok', value: sql } },
        })),
      },
      optInToShadowDatabase: false,
      filters: noFilter,
    }),
  )
}
