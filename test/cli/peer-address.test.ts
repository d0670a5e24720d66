import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { createInterface } from 'node:readline'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

/** A server with the module loaded, as the site has it, that answers with what it is told of where a request came from. */
const SERVER = `
const { createServer } = require('node:http')
const server = createServer(({ headers }, answer) => answer.end(headers['x-forwarded-for']))
server.listen(0, '127.0.0.1', () => console.log(server.address().port))`

const child = spawn(process.execPath, ['--import', './lib/cli/peer-address.mjs', '-e', SERVER], {
  stdio: ['ignore', 'pipe', 'inherit'],
})
let url = ''
beforeAll(async () => {
  const [port] = await once(createInterface(child.stdout), 'line')
  url = `http://127.0.0.1:${port}`
})
afterAll(() => {
  child.kill()
})

describe('peer-address.mjs', () => {
  it('puts the address that a request came from last, whatever its headers claim', async () => {
    const told = async (headers: Record<string, string>) => (await fetch(url, { headers })).text()
    expect(await told({})).toBe('127.0.0.1')
    expect(await told({ 'x-forwarded-for': '203.0.113.9' })).toBe('203.0.113.9, 127.0.0.1')
    expect(await told({ 'X-Forwarded-For': '203.0.113.9, 192.0.2.7' })).toBe(
      '203.0.113.9, 192.0.2.7, 127.0.0.1',
    )
  })
})
