import { ContentError } from '#lib/content/fault.ts'
import { Halt } from '#lib/errors.ts'
import { letReaderLeave } from './say.ts'

type Verb = () => Promise<{ run(args: readonly string[]): Promise<number> }>

/** Every command of `npm run`, one file each; a file is loaded only when its verb is asked for. */
const VERBS: Record<string, Verb> = {
  serve: () => import('./serve.ts'),
  test: () => import('./test.ts'),
  bench: () => import('./bench.ts'),
  generate: () => import('./generate.ts'),
  content: () => import('./content.ts'),
  spanish: () => import('./spanish.ts'),
  'take-in': () => import('./take-in.ts'),
  migrate: () => import('./migrate.ts'),
  migration: () => import('./migration.ts'),
  demo: () => import('./demo.ts'),
  rebuild: () => import('./rebuild.ts'),
  verify: () => import('./verify.ts'),
  backup: () => import('./backup.ts'),
  restore: () => import('./restore.ts'),
  'steward-link': () => import('./steward-link.ts'),
  'sign-in-link': () => import('./sign-in-link.ts'),
}

/** Runs one verb and resolves with the exit code. What an operator can act on is said without a trace. */
export async function main([name = '', ...args]: readonly string[]): Promise<number> {
  const verb = VERBS[name]
  letReaderLeave(process.stdout)
  if (verb === undefined) {
    console.error(`There is no command '${name}'. The commands: ${Object.keys(VERBS).join(', ')}.`)
    return 1
  }
  try {
    const { run } = await verb()
    return await run(args)
  } catch (error) {
    const plain = error instanceof Halt || error instanceof ContentError
    console.error(plain ? error.message : error)
    return 1
  }
}
