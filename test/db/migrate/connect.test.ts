import { type AddressInfo, createServer, type Server } from 'node:net'
import { describe, expect, it } from 'vitest'
import { openSession } from '#lib/db/migrate/connect.ts'

/** A message of PostgreSQL's protocol: a letter, the length, the content. */
function message(letter: string, content: Buffer): Buffer {
  const length = Buffer.alloc(4)
  length.writeInt32BE(content.length + 4)
  return Buffer.concat([Buffer.from(letter), length, content])
}

const number = (value: number, bytes: 2 | 4) => {
  const buffer = Buffer.alloc(bytes)
  buffer.writeIntBE(value, 0, bytes)
  return buffer
}

const column = (name: string) =>
  Buffer.concat([
    Buffer.from(`${name}\0`),
    number(0, 4),
    number(0, 2),
    number(25, 4),
    number(-1, 2),
    number(-1, 4),
    number(0, 2),
  ])

const value = (text: string) => Buffer.concat([number(text.length, 4), Buffer.from(text)])

/** Something that speaks enough of PostgreSQL's protocol to say which version it is. */
function serverOf(versionNumber: string, version: string, port = 0): Promise<Server> {
  const ready = message('Z', Buffer.from('I'))
  const welcome = Buffer.concat([message('R', number(0, 4)), ready])
  const answer = Buffer.concat([
    message('T', Buffer.concat([number(2, 2), column('number'), column('version')])),
    message('D', Buffer.concat([number(2, 2), value(versionNumber), value(version)])),
    message('C', Buffer.from('SELECT 1\0')),
    ready,
  ])
  const server = createServer((socket) => {
    socket.once('data', () => {
      socket.write(welcome)
      socket.on('data', (chunk) =>
        chunk.toString('latin1', 0, 1) === 'Q' ? socket.write(answer) : socket.end(),
      )
    })
  })
  return new Promise((resolve) => server.listen(port, '127.0.0.1', () => resolve(server)))
}

describe('openSession(url, withinMs)', () => {
  it('refuses a server older than 15, naming both versions', async () => {
    const server = await serverOf('140012', '14.12')
    const { port } = server.address() as AddressInfo
    await expect(openSession(`postgresql://u:p@127.0.0.1:${port}/d`, 2000)).rejects.toThrow(
      'The database runs PostgreSQL 14.12; 15 is the oldest this site works with.',
    )
    server.close()
  })

  it('takes a server of 15', async () => {
    const server = await serverOf('150000', '15.0')
    const { port } = server.address() as AddressInfo
    const session = await openSession(`postgresql://u:p@127.0.0.1:${port}/d`, 2000)
    await session.end()
    server.close()
  })

  it('waits for a server that is only just starting', async () => {
    const probe = await serverOf('150000', '15.0')
    const { port } = probe.address() as AddressInfo
    await new Promise((resolve) => probe.close(resolve))
    const opening = openSession(`postgresql://u:p@127.0.0.1:${port}/d`, 20_000)
    await new Promise((resolve) => setTimeout(resolve, 250))
    const server = await serverOf('150000', '15.0', port)
    await (await opening).end()
    server.close()
  })
})
