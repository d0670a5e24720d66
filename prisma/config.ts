import { defineConfig } from 'prisma/config'

/** Where Prisma's own tool finds what it needs, for those who have its engine: `npx prisma … --config prisma/config.ts`. */
export default defineConfig({
  schema: 'schema.prisma',
  migrations: { path: 'migrations' },
  ...(process.env.DATABASE_URL ? { datasource: { url: process.env.DATABASE_URL } } : {}),
})
