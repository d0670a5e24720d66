import { connection } from 'next/server'
import pg from 'pg'

const pool = new pg.Pool({ connectionString: process.env.DATABASE_URL, max: 10 })

/** The least page of the framework that asks the database one thing: what the site's pages are held against. */
export default async function Page() {
  await connection()
  const { rows } = await pool.query('SELECT slug, title, summary FROM "RecipeIndex" ORDER BY slug LIMIT 1')
  return (
    <main>
      <h1>{rows[0]?.title}</h1>
      <p>{rows[0]?.summary}</p>
    </main>
  )
}
