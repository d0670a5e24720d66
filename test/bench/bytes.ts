/**
 * Script (gzip) that a page loads above the bare page of the same framework, both built:
 *
 *   DATABASE_URL=postgresql://… npx tsx test/bench/bytes.ts [path …]
 */
import { gzipSync } from 'node:zlib'
import { CALCULATIONS } from '../../app/work-out/calculations.ts'
import { BARE, makeReady, ROOT, startNext } from './next-server.ts'

const databaseUrl = process.env.DATABASE_URL
if (!databaseUrl) throw new Error('Set DATABASE_URL to a database that holds the demo.')
const READ = ['/', '/recipes', '/tables', '/cases', '/sources', '/work-out']
const WORKED = Object.keys(CALCULATIONS).map((name) => `/work-out/${name}`)
const paths = process.argv.length > 2 ? process.argv.slice(2) : [...READ, ...WORKED]

makeReady()
const site = await startNext(ROOT, databaseUrl)
const bare = await startNext(BARE, databaseUrl)
try {
  const base = await weigh(bare.url)
  const rows = [{ page: 'bare page', ...base, 'script above bare': 0 }]
  for (const path of paths) {
    const weight = await weigh(site.url + path)
    rows.push({ page: path, ...weight, 'script above bare': weight.script - base.script })
  }
  console.table(rows)
} finally {
  await Promise.all([site.stop(), bare.stop()])
}

/** Bytes after gzip of the page, its script files, its inline scripts and its style sheets. */
async function weigh(url: string) {
  const html = await (await fetch(url)).text()
  const files = (pattern: RegExp) => [...new Set([...html.matchAll(pattern)].map((match) => match[1] ?? ''))]
  const inline = [...html.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)]
  return {
    script: await sizeOf(url, files(/<script[^>]*\ssrc="([^"]+)"/g)),
    'inline script': gzipSync(inline.map((match) => match[1]).join('\n')).length,
    style: await sizeOf(url, files(/<link[^>]*\shref="([^"]+\.css[^"]*)"/g)),
    html: gzipSync(html).length,
  }
}

async function sizeOf(page: string, files: readonly string[]): Promise<number> {
  const sizes = await Promise.all(
    files.map(async (file) => {
      const response = await fetch(new URL(file, page))
      return gzipSync(Buffer.from(await response.arrayBuffer())).length
    }),
  )
  return sizes.reduce((sum, size) => sum + size, 0)
}
