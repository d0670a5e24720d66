import type { TestProject } from 'vitest/node'
import { startServe } from './serve.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the built site with the demo in it, without a slash at the end. */
    siteUrl: string
    /** Its data folder. */
    siteDataDir: string
  }
}

/** Builds the site unless it is built, serves it with the demo over a new folder, and stops it in the end. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const serving = await startServe({ DEMO: 'on' })
  await serving.says(/^Ready on/m)
  project.provide('siteUrl', serving.url)
  project.provide('siteDataDir', serving.dataDir)
  return async () => {
    const code = await serving.stop()
    if (code !== 0) throw new Error(`serve ended with ${code}:\n${serving.said()}`)
  }
}
