import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { content } from '#lib/content/index.ts'
import { isCurrent, type RatioFile, workOutRatios } from '#lib/content/ratios.ts'

let kept: Promise<RatioFile['ratios']> | undefined

/**
 * The ratios of all rows, by address: those that the build left behind, or worked out on first asking where
 * there was no build from this content.
 */
export function allRatios(): Promise<RatioFile['ratios']> {
  kept ??= findRatios()
  return kept
}

async function findRatios(): Promise<RatioFile['ratios']> {
  const path = join(process.cwd(), '.next', 'ratios.json')
  if (existsSync(path)) {
    const file = JSON.parse(readFileSync(path, 'utf8')) as RatioFile
    if (isCurrent(file, content())) return file.ratios
  }
  return (await workOutRatios(content(), () => setImmediate())).ratios
}
