import { Halt } from '#lib/errors.ts'
import { loadDemo } from '#lib/workflow/load-demo.ts'
import { removeDemo } from '#lib/workflow/remove-demo.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

/** `npm run demo -- load` brings the invented entries in, or back; `npm run demo -- remove` takes them out. */
export function run([what]: readonly string[]): Promise<number> {
  if (what !== 'load' && what !== 'remove')
    throw new Halt('Say which: npm run demo -- load, or npm run demo -- remove')
  return withDatabase(async () => {
    if (what === 'remove') {
      say(`Invented entries withdrawn: ${await removeDemo()}. They stay out until npm run demo -- load.`)
    } else {
      const { added, revised, restored, unchanged } = await loadDemo({ restore: true })
      say(`Demo: added ${added}, revised ${revised}, restored ${restored}, unchanged ${unchanged}.`)
    }
    return 0
  })
}
