import { selectWorks } from './works-scope.ts'

const kept = globalThis as { putlogReadAhead?: boolean | undefined }

/**
 * Begins to read the record into memory, once per process: the first question then need not wait for all of it. What
 * fails is begun again at the next call.
 */
export function readAhead(): void {
  if (kept.putlogReadAhead) return
  kept.putlogReadAhead = true
  selectWorks([{ filter: {}, asOf: '2000-01-01' }], () => undefined).catch(() => {
    kept.putlogReadAhead = false
  })
}
