import { PassThrough } from 'node:stream'
import { expect, test } from 'vitest'
import { letReaderLeave } from '#lib/cli/say.ts'

const fault = (code: string) => Object.assign(new Error(code), { code })

test('letReaderLeave(stream) lets a closed pipe pass, and throws every other fault', () => {
  const stream = new PassThrough()
  expect(() => stream.emit('error', fault('EPIPE'))).toThrow('EPIPE')
  letReaderLeave(stream)
  expect(() => stream.emit('error', fault('EPIPE'))).not.toThrow()
  expect(() => stream.emit('error', fault('ENOSPC'))).toThrow('ENOSPC')
})
