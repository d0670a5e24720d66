import { createHash, randomBytes } from 'node:crypto'
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buffer } from 'node:stream/consumers'
import S3rver from 's3rver'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bucketStore } from '#lib/photos/bucket-store.ts'
import { folderStore } from '#lib/photos/folder-store.ts'
import type { PhotoStore } from '#lib/photos/store.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-store-'))
/** A server of its own that speaks S3 over HTTP, from npm. */
const server = new S3rver({
  address: '127.0.0.1',
  port: 0,
  silent: true,
  directory: join(folder, 'bucket'),
  configureBuckets: [{ name: 'photos-of-tests' }],
})
const stores: Record<string, PhotoStore> = { 'in a folder': folderStore(join(folder, 'store')) }

beforeAll(async () => {
  const { port } = await server.run()
  stores['in a bucket'] = bucketStore({
    bucket: 'photos-of-tests',
    endpoint: `http://127.0.0.1:${port}`,
    region: 'us-east-1',
    keys: { accessKeyId: 'S3RVER', secretAccessKey: 'S3RVER' },
  })
})
afterAll(async () => {
  await server.close()
  rmSync(folder, { recursive: true, force: true })
})

describe.each(['in a folder', 'in a bucket'])('a store %s', (where) => {
  const store = () => stores[where] as PhotoStore
  let files = 0
  const put = async (name: string, data: Buffer) => {
    files += 1
    const path = join(folder, `${where}-${files}`)
    writeFileSync(path, data)
    await store().put(name, path)
    return path
  }
  const read = async (name: string) => {
    const got = await store().get(name)
    return got && { bytes: got.bytes, data: await buffer(got.stream) }
  }

  it('gives back 25 MB as they were put, and uses the file up', async () => {
    const data = randomBytes(25 * 1024 * 1024)
    const path = await put('pictures/ab/large/kept.jpg', data)
    const got = await read('pictures/ab/large/kept.jpg')
    expect(got?.bytes).toBe(data.length)
    const sha = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
    expect(sha(got?.data ?? Buffer.alloc(0))).toBe(sha(data))
    expect(existsSync(path)).toBe(false)
  })

  it('replaces what is there', async () => {
    await put('pictures/ab/one/320.webp', Buffer.from('first'))
    await put('pictures/ab/one/320.webp', Buffer.from('second'))
    expect((await read('pictures/ab/one/320.webp'))?.data.toString()).toBe('second')
  })

  it('answers null for what is not there', async () => {
    expect(await read('pictures/ab/none/320.webp')).toBeNull()
  })

  it('removes all of one name’s files and no others', async () => {
    for (const name of ['uploads/k1/a', 'uploads/k1/b', 'uploads/k10/a']) await put(name, Buffer.from(name))
    await store().removeAll('uploads/k1/')
    await store().removeAll('uploads/nothing/')
    expect(await read('uploads/k1/a')).toBeNull()
    expect(await read('uploads/k1/b')).toBeNull()
    expect((await read('uploads/k10/a'))?.data.toString()).toBe('uploads/k10/a')
  })
})

it('folderStore(root) keeps to its folder', async () => {
  const store = folderStore(join(folder, 'store'))
  await expect(store.get('../elsewhere')).rejects.toThrow(RangeError)
  expect(readdirSync(join(folder, 'store')).sort()).toEqual(['pictures', 'uploads'])
})
