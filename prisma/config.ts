import { defineConfig } from 'prisma/config'
import { readSettings } from '../lib/env.ts'

const { databaseUrl } = readSettings()

/** Where Prisma's own tool finds what it needs, for those who have its engine: `npx prisma … --config prisma/config.ts`. */
export default defineConfig({
  schema: 'schema.prisma',
  migrations: { path: 'migrations' },
  ...(databaseUrl ? { datasource: { url: databaseUrl } } : {}),
})
