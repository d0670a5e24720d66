import { createReadStream } from 'node:fs'
import { mkdir, open, rename, rm, stat } from 'node:fs/promises'
import { dirname, join, resolve, sep } from 'node:path'
import type { PhotoStore } from './store.ts'

/** A store in a folder of this machine; several servers may share it over a network file system. */
export function folderStore(root: string): PhotoStore {
  const at = (name: string) => {
    const path = resolve(root, name)
    if (!path.startsWith(resolve(root) + sep)) throw new RangeError(`not a name in the store: ${name}`)
    return path
  }
  return {
    async put(name, path) {
      const target = at(name)
      await mkdir(dirname(target), { recursive: true, mode: 0o700 })
      await flush(path)
      await rename(path, target)
      await flush(dirname(target))
    },
    async get(name) {
      const path = at(name)
      try {
        const { size } = await stat(path)
        const file = await open(path)
        return { stream: createReadStream(path, { fd: file }), bytes: size }
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
        throw error
      }
    },
    async removeAll(prefix) {
      await rm(at(join(prefix)), { recursive: true, force: true })
    },
  }
}

/** Brings a file, or what a folder lists, to the disk. */
async function flush(path: string): Promise<void> {
  const file = await open(path, 'r')
  try {
    await file.sync()
  } finally {
    await file.close()
  }
}
