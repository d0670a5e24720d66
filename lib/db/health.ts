import { db } from './client.ts'

const LIMIT_MS = 1500

/** Whether the database answers a trivial question in good time. Never throws. */
export async function ping(): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(resolve, LIMIT_MS, false)
  })
  try {
    return await Promise.race([ask(), late])
  } finally {
    clearTimeout(timer)
  }
}

async function ask(): Promise<boolean> {
  try {
    await db().$queryRaw`SELECT 1`
    return true
  } catch {
    return false
  }
}
