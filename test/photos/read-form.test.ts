import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readPhotoForm } from '../../app/photos/add/read-form.ts'

const dataDir = mkdtempSync(join(tmpdir(), 'putlog-form-'))
beforeAll(() => {
  process.env.DATA_DIR = dataDir
})
afterAll(() => {
  delete process.env.DATA_DIR
  rmSync(dataDir, { recursive: true, force: true })
})

const post = (body: BodyInit, type = 'multipart/form-data; boundary=x') =>
  readPhotoForm(
    new Request('http://site/photos/add', { method: 'POST', headers: { 'Content-Type': type }, body }),
  )
const field = (name: string, text: string) =>
  `--x\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${text}\r\n`
const file = (content: string, name = 'a.jpg') =>
  `--x\r\nContent-Disposition: form-data; name="photo"; filename="${name}"\r\nContent-Type: application/octet-stream\r\n\r\n${content}`
const left = () => readdirSync(join(dataDir, 'photos-waiting'))

describe('readPhotoForm(request)', () => {
  it('reads fields and files in their order, and takes a choice of no file for none', async () => {
    const form = `${field('back', '/photos')}${file('one')}\r\n${file('', '')}\r\n${file('two')}\r\n--x--\r\n`
    const { fields, files } = await post(form)
    expect(fields).toEqual({ back: '/photos' })
    expect(files.map(({ path, bytes, end }) => [readFileSync(path, 'utf8'), bytes, end])).toEqual([
      ['one', 3, 'whole'],
      ['two', 3, 'whole'],
    ])
    for (const { path } of files) rmSync(path)
  })

  it('keeps an empty file that has a name, so that it is told of', async () => {
    const { files } = await post(`${file('')}\r\n--x--\r\n`)
    expect(files.map(({ bytes }) => bytes)).toEqual([0])
    for (const { path } of files) rmSync(path)
  })

  it('says of a file above 25 MB that it is too long, and reads the one after it', async () => {
    const form = new Blob([file(''), new Uint8Array(25 * 1024 * 1024 + 1), `\r\n${file('two')}\r\n--x--\r\n`])
    const { files } = await post(form)
    expect(files.map(({ bytes, end }) => [bytes, end])).toEqual([
      [25 * 1024 * 1024, 'too-long'],
      [3, 'whole'],
    ])
    for (const { path } of files) rmSync(path)
  })

  it.each([
    ['breaks off within a file', file('half')],
    ['breaks off within its second file', `${file('one')}\r\n${file('ha')}`],
    ['breaks off within a head', '--x\r\nContent-Disp'],
    ['has no parts', 'words'],
  ])('refuses a form that %s, and leaves nothing', async (_what, body) => {
    await expect(post(body)).rejects.toMatchObject({ code: 'invalid' })
    expect(left()).toEqual([])
  })

  it('refuses what is no form with files', async () => {
    await expect(post('words', 'text/plain')).rejects.toMatchObject({ code: 'invalid' })
  })
})
